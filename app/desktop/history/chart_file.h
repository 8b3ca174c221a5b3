// A history as a file: its chart alone, or the whole report.
#pragma once

#include <QString>

#include "history_chart.h"
#include "issue_file.h"

namespace steadyturn {

struct HistoryFile {
  const HistoryData& history;
  Along along = Along::Calendar;
};

// The ending chooses: .svg and .png the chart, always on a light ground (a file is looked at on paper and in mails);
// .pdf and .csv the report. The ledger tells that it was issued.
Result<IssuedFile> writeHistoryFile(Shop& shop, const HistoryFile& file, const QString& path);

}  // namespace steadyturn
