// A tool's history as a report: its chart, what the drift says, and every check at the set-point.
#pragma once

#include "history_chart.h"
#include "report_document.h"

namespace steadyturn {

ReportDocument buildHistoryReport(const HistoryData& data, const std::string& shopName, Date issued);

}  // namespace steadyturn
