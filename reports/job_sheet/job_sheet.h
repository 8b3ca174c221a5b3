// The sheet of a job to print: what is to be tightened and how, what was done, what is still lacking, where to sign.
#pragma once

#include <string>

#include "job_record.h"
#include "report_document.h"

namespace steadyturn {

struct JobSheetData {
  std::string shopName{}, shopPlace{};
  Date issued{};
  JobSheet sheet{};
};

ReportDocument buildJobSheet(const JobSheetData& data);

}  // namespace steadyturn
