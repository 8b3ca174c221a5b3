// Every writer says CannotCreate when its output can't be written to its end: at once, midway, and a single byte
// short.
#include "failing_sink.h"

#include <gtest/gtest.h>

#include <QBuffer>
#include <QFile>
#include <functional>

#include "chart_picture.h"
#include "dcc.h"
#include "demo_reports.h"
#include "writers.h"

namespace steadyturn {
namespace {

struct Writer {
  const char* name;
  std::function<Result<void>(QIODevice&)> write;
};

ReportDocument report() {
  auto document = buildCertificate(test::demoCertificate());
  document.blocks.push_back(ChartBlock{historyChart(test::demoHistory())});
  return document;
}

std::vector<Writer> writers() {
  static const auto document = report();
  static const auto chart = historyChart(test::demoHistory());
  static const auto certificate = test::demoCertificate();
  return {{"xml", [](QIODevice& out) { return writeDcc(certificate, out); }},
          {"csv", [](QIODevice& out) { return writeCsv(document, out); }},
          {"pdf", [](QIODevice& out) { return writePdf(document, out); }},
          {"svg",
           [](QIODevice& out) {
             return writeChartSvg(chart, lightTheme(), {800, 500}, out);
           }},
          {"png", [](QIODevice& out) {
             return writeChartPng(chart, lightTheme(), {800, 500}, out);
           }}};
}

TEST(FailingSink, EveryWriterNoticesAnOutputCutShort) {
  for (const auto& writer : writers()) {
    SCOPED_TRACE(writer.name);
    QBuffer whole;
    whole.open(QIODevice::WriteOnly);
    ASSERT_TRUE(writer.write(whole));
    ASSERT_GT(whole.size(), 1000);
    // A PDF states its own time, so a second run may be a few bytes longer or shorter.
    for (const qint64 room : {qint64{0}, qint64{1}, whole.size() / 2, whole.size() - 20}) {
      test::FailingSink sink(room);
      const auto written = writer.write(sink);
      ASSERT_FALSE(written);
      EXPECT_EQ(written.error().front().kind, ProblemKind::CannotCreate);
      EXPECT_EQ(written.error().front().accepted, "no space left");
    }
  }
}

TEST(FailingSink, AFullDiskIsNoticedThoughFilesAreBuffered) {
  for (const auto& writer : writers()) {
    SCOPED_TRACE(writer.name);
    QFile full(QStringLiteral("/dev/full"));
    ASSERT_TRUE(full.open(QIODevice::WriteOnly));
    const auto written = writer.write(full);
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().front().kind, ProblemKind::CannotCreate);
    EXPECT_EQ(written.error().front().found, "/dev/full");
  }
}

}  // namespace
}  // namespace steadyturn
