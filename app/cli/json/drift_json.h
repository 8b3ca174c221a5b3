// `sturn evaluate drift`: its JSON ⇄ the core's values.
#pragma once

#include "drift.h"
#include "json_document.h"

namespace steadyturn {

Result<DriftInput> readDriftInput(const Json& document);
OrderedJson driftResultJson(const DriftResult& result);

}  // namespace steadyturn
