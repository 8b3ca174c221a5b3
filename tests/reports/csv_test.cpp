#include <gmock/gmock.h>

#include <QBuffer>
#include <QFile>

#include "demo_reports.h"
#include "writers.h"

namespace steadyturn {
namespace {

std::string csvOf(const ReportDocument& report) {
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  EXPECT_TRUE(writeCsv(report, buffer));
  return buffer.data().toStdString();
}

TEST(ReportCsv, IsTheGoldenCertificate) {
  QFile golden(QStringLiteral(STEADYTURN_GOLDEN "/certificate.csv"));
  ASSERT_TRUE(golden.open(QIODevice::ReadOnly));
  EXPECT_EQ(csvOf(buildCertificate(test::demoCertificate())), golden.readAll().toStdString());
}

TEST(ReportCsv, NeutralisesFormulasButNoNumbers) {
  ReportDocument report{
      .title = "=HYPERLINK(1)", .number = "@n", .issuer = "-shop", .issued = "2026-01-01", .blocks = {}};
  report.blocks.push_back(
      FactsBlock{.heading = "+heading", .facts = {{"=1+1", "-5"}, {"+A1", "+2.5e-3"}, {"\tx", "-5 %"}}});
  EXPECT_EQ(csvOf(report),
            "title,'=HYPERLINK(1)\r\nnumber,'@n\r\nissued by,'-shop\r\nissued on,2026-01-01\r\n"
            "\r\n'+heading\r\n'=1+1,-5\r\n'+A1,+2.5e-3\r\n'\tx,'-5 %\r\n");
}

TEST(ReportCsv, QuotesAsRfc4180Has) {
  ReportDocument report{.title = "a \"b\", c", .number = "two\nlines", .issuer = "", .issued = "", .blocks = {}};
  EXPECT_EQ(csvOf(report), "title,\"a \"\"b\"\", c\"\r\nnumber,\"two\nlines\"\r\nissued by,\r\nissued on,\r\n");
}

TEST(ReportCsv, GivesAChartAsItsPoints) {
  ReportDocument report;
  report.blocks.push_back(ChartBlock{historyChart(test::demoHistory())});
  EXPECT_THAT(csvOf(report), testing::HasSubstr("as found,2020-02-11,0.3,0.6\r\n"));
  EXPECT_THAT(csvOf(report), testing::HasSubstr("as left,2023-02-14,0.1,0.6\r\n"));
}

}  // namespace
}  // namespace steadyturn
