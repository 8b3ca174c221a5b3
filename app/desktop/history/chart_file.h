// A chart as a file: alone, or the whole report that it belongs to.
#pragma once

#include <QString>
#include <functional>

#include "history_chart.h"
#include "issue_file.h"
#include "report_document.h"

namespace steadyturn {

struct ChartOrReport {
  std::function<ChartModel()> chart;
  std::function<ReportDocument()> report;
};

// The ending chooses: .svg and .png the chart, always on a light ground (a file is looked at on paper and in mails);
// .pdf and .csv the report. The ledger tells that it was issued.
Result<IssuedFile> writeChartOrReport(Shop& shop, const PaperSubject& paper, const ChartOrReport& made,
                                      const QString& path);

struct HistoryFile {
  const HistoryData& history;
  Along along = Along::Calendar;
};
Result<IssuedFile> writeHistoryFile(Shop& shop, const HistoryFile& file, const QString& path);

}  // namespace steadyturn
