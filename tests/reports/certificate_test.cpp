// What a certificate must carry: ISO/IEC 17025:2017 7.8.2 and 7.8.4, ISO 6789-2:2017 clause 8 (from memory).
#include "certificate.h"

#include <gmock/gmock.h>

#include "demo_reports.h"

namespace steadyturn {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

std::string allWords(const ReportDocument& report) {
  std::string words;
  const auto say = [&](const std::string& text) { words += text + "\n"; };
  for (const auto& block : report.blocks) {
    if (const auto* facts = std::get_if<FactsBlock>(&block)) {
      say(facts->heading);
      for (const auto& fact : facts->facts) say(fact.name + ": " + fact.value);
    } else if (const auto* paragraph = std::get_if<ParagraphBlock>(&block)) {
      say(paragraph->heading);
      say(paragraph->text);
    } else if (const auto* fine = std::get_if<FinePrintBlock>(&block)) {
      say(fine->text);
    } else if (const auto* table = std::get_if<TableBlock>(&block)) {
      say(table->heading);
      for (const auto& row : table->rows) {
        for (const auto& cell : row) say(cell);
      }
    }
  }
  return words;
}

const TableBlock* tableCalled(const ReportDocument& report, std::string_view start) {
  for (const auto& block : report.blocks) {
    const auto* table = std::get_if<TableBlock>(&block);
    if (table && table->heading.starts_with(start)) return table;
  }
  return nullptr;
}

std::vector<std::string> rowOf(const TableBlock& table, std::string_view first) {
  for (const auto& row : table.rows) {
    if (row.front().starts_with(first)) return row;
  }
  return {};
}

TEST(Certificate, CarriesWhatTheStandardsAskFor) {
  const auto report = buildCertificate(test::demoCertificate());
  EXPECT_EQ(report.number, "C-42");
  EXPECT_EQ(report.issuer, "Depot North, Quay Road 4, Northhaven");
  EXPECT_EQ(report.issued, "2026-03-15");
  const auto words = allWords(report);
  for (const char* needed : {"Identification: TW-07",
                             "Maker: Harbourside Tools",
                             "Serial number: HT-20419",
                             "Type II, class A: adjustable wrench, graduated",
                             "20 N·m to 100 N·m",
                             "Graduation: 1 N·m",
                             "Date of the check: 2026-03-14",
                             "Direction: clockwise",
                             "21.5 °C, 45 % relative humidity",
                             "Checked by: M. Quill",
                             "ISO 6789-1:2017",
                             "ISO 6789-2:2017",
                             "ILAC-G8:09/2019",
                             "Certificate: K-2026-0117",
                             "Calibrated: 2026-01-12",
                             "W = 0.4 % of reading, k = 2",
                             "The results apply to the item as checked",
                             "no accreditation is claimed",
                             "Next check due: 2027-03-14, the workshop's own date",
                             "entry 583 of 1288",
                             "coverage probability of about 95 %"}) {
    EXPECT_THAT(words, HasSubstr(needed));
  }
}

TEST(Certificate, PrintsReadingsAsTypedWithTheirDeviations) {
  const auto report = buildCertificate(test::demoCertificate());
  const auto* table = tableCalled(report, "Readings");
  ASSERT_NE(table, nullptr);
  // 20.0 stays 20.0. Deviations by hand: (100 − 101.2) / 101.2 = −1.1858 %, (100 − 100.8) / 100.8 = −0.7937 % …
  EXPECT_THAT(table->rows[0], ElementsAre("20 N·m", "reading, N·m", "19.8", "20.1", "20.0", "19.9", "20.2"));
  EXPECT_THAT(table->rows[5], ElementsAre("", "deviation, %", "-1.19", "-0.79", "-0.99", "-1.38", "-0.89"));
}

TEST(Certificate, PrintsMoreThanTenReadingsInFurtherRows) {
  auto data = test::demoCertificate();
  data.check.points[0].readings.assign(12, "20.0");
  test::evaluateStored(data.tool, data.check);
  const auto report = buildCertificate(data);
  const auto* table = tableCalled(report, "Readings");
  ASSERT_NE(table, nullptr);
  EXPECT_EQ(table->columns.size(), 12u);
  EXPECT_EQ(table->rows[2][3], "20.0");
  EXPECT_EQ(table->rows[2][4], "");
  for (const auto& row : table->rows) EXPECT_EQ(row.size(), table->columns.size());
}

TEST(Certificate, ResultsAreTheStoredFacts) {
  auto data = test::demoCertificate();
  data.check.points[1].meanDeviation = -0.7;  // not what the readings give: the record counts, and the paper says so
  const auto report = buildCertificate(data);
  const auto* table = tableCalled(report, "Results");
  ASSERT_NE(table, nullptr);
  EXPECT_EQ(table->rows[1][2], "-0.700");
  EXPECT_THAT(allWords(report), HasSubstr("The recorded figures, under Results, are the ones that count"));
}

TEST(Certificate, BudgetNamesEverySourceAndSaysWhichCountedAsNothing) {
  const auto report = buildCertificate(test::demoCertificate());
  const auto* table = tableCalled(report, "Uncertainty budget");
  ASSERT_NE(table, nullptr);
  // By hand (ISO 6789-2:2017): 0.4 / 2; (1 / 2) / √3 / X × 100 at 20, 60, 100 N·m; 0.3 / (2 √3).
  EXPECT_THAT(rowOf(*table, "reference"), ElementsAre("reference standard", "0.200", "0.200", "0.200"));
  EXPECT_THAT(rowOf(*table, "graduation"), ElementsAre("graduation of the tool", "1.443", "0.481", "0.289"));
  EXPECT_EQ(rowOf(*table, "reproducibility")[1], "0.087");
  EXPECT_THAT(rowOf(*table, "loading point")[0], HasSubstr("not evaluated, counted as 0"));
  EXPECT_THAT(allWords(report), Not(HasSubstr("The recorded figures")));
}

TEST(Certificate, StandsAsFoundBesideAsLeft) {
  const auto report = buildCertificate(test::demoCertificate());
  const auto* table = tableCalled(report, "As found (check 41, 2026-03-14) beside as left");
  ASSERT_NE(table, nullptr);
  EXPECT_EQ(table->rows[0][3], "fail");
  EXPECT_EQ(table->rows[0][6], "pass");
  EXPECT_THAT(allWords(report), HasSubstr("As found on 2026-03-14, before the adjustment (check 41): fail."));

  auto alone = test::demoCertificate();
  alone.before.reset();
  EXPECT_EQ(tableCalled(buildCertificate(alone), "As found"), nullptr);
}

TEST(Certificate, ASetPointOfOneCheckOnlyIsNotMadeUp) {
  auto data = test::demoCertificate();
  data.before->points.pop_back();
  const auto report = buildCertificate(data);
  EXPECT_THAT(tableCalled(report, "As found")->rows[2],
              ElementsAre("100 N·m", "", "", "not checked", "-1.048", "0.762", "pass"));
}

TEST(Certificate, SaysThatTheReferenceIsMissingOrOverdue) {
  auto data = test::demoCertificate();
  data.reference->due = parseDate("2026-03-13", "due").value();
  EXPECT_THAT(allWords(buildCertificate(data)), HasSubstr("2026-03-13: it was overdue on the day of the check"));
  data.reference.reset();
  EXPECT_THAT(allWords(buildCertificate(data)), HasSubstr("R-1 (no longer on record)"));
  data.check.reference.clear();
  EXPECT_THAT(allWords(buildCertificate(data)), HasSubstr("carries no traceability"));
}

TEST(Certificate, SaysWhatWasNotRecorded) {
  auto data = test::demoCertificate();
  data.check.temperatureC.reset();
  data.check.humidityPercent.reset();
  data.check.by.clear();
  data.dueDate.reset();
  const auto words = allWords(buildCertificate(data));
  EXPECT_THAT(words, HasSubstr("temperature not recorded, humidity not recorded"));
  EXPECT_THAT(words, HasSubstr("Checked by: not recorded"));
  EXPECT_THAT(words, Not(HasSubstr("Next check due")));
}

TEST(Certificate, NamesCorrectionsBothWays) {
  auto data = test::demoCertificate();
  data.check.corrects = 40;
  data.check.correctionReason = "readings swapped";
  data.check.correctedBy = 50;
  const auto words = allWords(buildCertificate(data));
  EXPECT_THAT(words, HasSubstr("Replaces: check 40: readings swapped"));
  EXPECT_THAT(words, HasSubstr("No longer valid: replaced by check 50"));
}

TEST(Certificate, AToolThatFailedHasNoDueDateButAWarning) {
  auto data = test::demoCertificate();
  data.check = *data.before;
  data.before.reset();
  const auto words = allWords(buildCertificate(data));
  EXPECT_THAT(words, HasSubstr("Next check due: before any further use"));
  EXPECT_THAT(words, Not(HasSubstr("2027-03-14")));
  EXPECT_THAT(words, HasSubstr("FAIL: tool TW-07, as found"));
}

TEST(Certificate, WordsTheGuardedRule) {
  auto data = test::demoCertificate();
  data.check.rule = DecisionRule::Guarded;
  test::evaluateStored(data.tool, data.check);
  EXPECT_THAT(allWords(buildCertificate(data)), HasSubstr("pass when the mean deviation lies within ±(4 % − W)"));
}

TEST(Certificate, AReadingThatCannotBeReadLeavesTheRecordedFigures) {
  auto data = test::demoCertificate();
  data.check.points[0].readings[0] = "1O.5";
  const auto report = buildCertificate(data);
  EXPECT_EQ(tableCalled(report, "Uncertainty budget"), nullptr);
  EXPECT_NE(tableCalled(report, "Results"), nullptr);
  EXPECT_THAT(allWords(report), HasSubstr("can't be evaluated again"));
}

}  // namespace
}  // namespace steadyturn
