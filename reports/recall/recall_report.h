// The report of a recall: what a failed check puts in doubt, how likely each tightening is wrong, and what was
// decided (nonconforming work: ISO/IEC 17025:2017, 7.10; measuring equipment found unfit: ISO 9001:2015, 7.1.5.2).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "recall.h"
#include "recall_record.h"
#include "records.h"
#include "report_document.h"

namespace steadyturn {

struct RecallLine {
  Tightening tightening;
  Fastener fastener;
  RecallResult result;
  std::optional<RecallDecision> decision{};
};

struct RecallReportData {
  std::string shopName{}, shopPlace{};
  Tool tool{};
  std::optional<Date> lastGood{};
  Date foundBad{};
  std::int64_t failedCheck = 0;
  std::vector<RecallLine> lines{};  // worst first
  std::string borrowed{};           // what the lines' figures by the fleet rest on; empty: there are none
  std::optional<RecallClosing> closing{};
  Date issued{};
};

ReportDocument buildRecallReport(const RecallReportData& data);

}  // namespace steadyturn
