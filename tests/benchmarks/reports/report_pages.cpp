// Pages a second of the program's own reports (certificates, histories with charts, the tool register) beside
// QPdfWriter writing as many files with as many pages of plain text each, by turns in one run. One long file of plain
// text stands beside it: it embeds its fonts once, where each report has its own.
#include <QApplication>
#include <QBuffer>
#include <QElapsedTimer>
#include <QPainter>
#include <QPdfWriter>
#include <QTemporaryDir>
#include <algorithm>
#include <cstdio>
#include <numeric>

#include "history_report.h"
#include "plain_font.h"
#include "shop.h"
#include "writers.h"

namespace {

using namespace steadyturn;

constexpr int rounds = 5;
constexpr int textLines = 56;  // of a page of plain text, as many as a printed page takes

double seconds(const QElapsedTimer& timer) { return static_cast<double>(timer.nsecsElapsed()) / 1e9; }

int pagesOf(const QByteArray& pdf) { return static_cast<int>(pdf.count("/Type /Page\n")); }

std::vector<int> writeReports(const std::vector<ReportDocument>& reports) {
  std::vector<int> pages;
  for (const auto& report : reports) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    if (!writePdf(report, buffer)) return {};
    pages.push_back(pagesOf(bytes));
  }
  return pages;
}

void writePlainText(int pages) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter writer(&buffer);
  writer.setPdfVersion(QPagedPaintDevice::PdfVersion_A1b);
  writer.setResolution(96);
  QPainter painter(&writer);
  painter.setFont(plainFont(13));
  for (int page = 0; page < pages; ++page) {
    if (page > 0) writer.newPage();
    for (int line = 0; line < textLines; ++line) {
      painter.drawText(QPointF(0, 16.0 * (line + 1)),
                       QStringLiteral("%1 of %2: what stands on a page of plain text, and a figure: %3 N·m, ± %4 %")
                           .arg(page)
                           .arg(line)
                           .arg(line * 7919 % 1000)
                           .arg(page * 31 % 17));
    }
  }
}

std::vector<ReportDocument> reportsOf(const Shop& shop) {
  std::vector<ReportDocument> reports;
  const auto checks = shop.newestChecks(20);
  for (const Check& check : *checks) {
    if (const auto data = shop.certificate(check.id)) reports.push_back(buildCertificate(*data));
  }
  const auto tools = shop.tools();
  for (const Tool& tool : *tools) {
    if (const auto data = shop.history(tool.id, {}, shop.today()))
      reports.push_back(buildHistoryReport(*data, shop.name(), shop.today()));
  }
  if (const auto data = shop.toolRegister(shop.today())) reports.push_back(buildToolRegister(*data));
  return reports;
}

double median(std::vector<double> values) {
  std::ranges::sort(values);
  return values[values.size() / 2];
}

}  // namespace

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  const QApplication application(argc, argv);
  const QTemporaryDir folder;
  const auto shop = Shop::createDemo(folder.filePath("demo.sturn").toStdString());
  if (!shop) return 1;
  const auto reports = reportsOf(*shop);
  std::vector<double> own, plain, oneFile;
  std::vector<int> pages;
  for (int round = 0; round < rounds; ++round) {
    QElapsedTimer timer;
    timer.start();
    pages = writeReports(reports);
    own.push_back(seconds(timer));
    timer.restart();
    for (const int count : pages) writePlainText(count);
    plain.push_back(seconds(timer));
    timer.restart();
    writePlainText(std::accumulate(pages.begin(), pages.end(), 0));
    oneFile.push_back(seconds(timer));
  }
  const int all = std::accumulate(pages.begin(), pages.end(), 0);
  if (all == 0) return 1;
  std::printf(
      "%zu reports, %d pages: %.0f pages a second, plain text in as many files %.0f; %.2f of it (goal: at least "
      "0.33); "
      "in one file %.0f\n",
      reports.size(), all, all / median(own), all / median(plain), median(plain) / median(own),
      all / median(oneFile));
  return 0;
}
