#include "chart_file.h"

#include <QFileInfo>
#include <QSize>
#include <map>

#include "chart_picture.h"
#include "history_report.h"
#include "text.h"
#include "writers.h"

namespace steadyturn {
namespace {

constexpr QSize chartFileSize(1200, 640);

}  // namespace

Result<IssuedFile> writeChartOrReport(Shop& shop, const PaperSubject& paper, const ChartOrReport& made,
                                      const QString& path) {
  using Write = std::function<Result<void>(QIODevice&)>;
  const std::map<QString, Write> writers{
      {QStringLiteral("svg"),
       [&](QIODevice& out) { return writeChartSvg(made.chart(), lightTheme(), chartFileSize, out); }},
      {QStringLiteral("png"),
       [&](QIODevice& out) { return writeChartPng(made.chart(), lightTheme(), chartFileSize, out); }},
      {QStringLiteral("pdf"), [&](QIODevice& out) { return writePdf(made.report(), out); }},
      {QStringLiteral("csv"), [&](QIODevice& out) { return writeCsv(made.report(), out); }}};
  const auto writer = writers.find(QFileInfo(path).suffix().toLower());
  if (writer == writers.end()) {
    return refuse(
        {.field = "chart file", .found = toText(path), .accepted = "a name that ends in .svg, .png, .pdf or .csv"});
  }
  return issueFile(shop, paper, path, writer->second);
}

Result<IssuedFile> writeHistoryFile(Shop& shop, const HistoryFile& file, const QString& path) {
  return writeChartOrReport(
      shop, {.what = "history", .id = file.history.tool.id},
      {.chart = [&] { return historyChart(file.history, file.along); },
       .report = [&] { return buildHistoryReport(file.history, shop.name(), file.history.asOf); }},
      path);
}

}  // namespace steadyturn
