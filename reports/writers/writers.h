// Writers of a report document. Each says false and why when the output can't be created or written to its end.
#pragma once

#include <QIODevice>

#include "problem.h"
#include "report_document.h"

namespace steadyturn {

// REQUIRES for PDF: a QGuiApplication (any platform, "offscreen" does) for fonts, a QApplication where the report has
// charts.
Result<void> writePdf(const ReportDocument& report, QIODevice& out);
// RFC 4180: headings and facts as rows of two cells, tables with their header, a blank line between blocks. Text
// cells that a spreadsheet would run as a formula are neutralised.
Result<void> writeCsv(const ReportDocument& report, QIODevice& out);

}  // namespace steadyturn
