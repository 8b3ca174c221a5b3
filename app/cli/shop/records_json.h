// What a shop keeps, as JSON: names as the columns of its files, or as the contract has them.
#pragma once

#include "job_record.h"
#include "json_document.h"
#include "records.h"

namespace steadyturn {

OrderedJson toolJson(const Tool& tool);
OrderedJson referenceJson(const Reference& reference);
OrderedJson fastenerJson(const Fastener& fastener);
OrderedJson checkJson(const Check& check);
OrderedJson tighteningJson(const Tightening& tightening);
OrderedJson jobSheetJson(const JobSheet& sheet);

}  // namespace steadyturn
