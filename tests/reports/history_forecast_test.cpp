// The drift chart of a tool whose own checks are too few: what is drawn and said is the fleet's, told apart by
// strokes and words.
#include <gmock/gmock.h>

#include "demo_reports.h"
#include "history_chart.h"
#include "history_words.h"

namespace steadyturn {
namespace {

using test::summary;
using testing::HasSubstr;
using testing::Not;
using testing::SizeIs;

Date dayOf(const char* date) { return parseDate(date, "date").value(); }

FleetWord sevenTools() {
  FleetWord word;
  word.estimated = true;
  word.toolsThatSpeak = 7;
  word.outlook.slope = {.slope = 0.52, .standardError = 0.1, .borrowed = 0.83};
  return word;
}

// Two checks: a slope of its own, no interval.
HistoryData borrowed(OutlookBasis basis) {
  auto data = test::historyOf(
      {summary("2025-01-10", Phase::AsFound, 0.4), summary("2026-01-10", Phase::AsFound, 0.8)}, dayOf("2026-03-01"));
  HistoryForecast forecast{.fleet = sevenTools(), .outlook = {}};
  forecast.outlook.basis = basis;
  forecast.outlook.dueDate = dayOf("2026-12-01");
  if (basis == OutlookBasis::Fleet) forecast.outlook.crossingDate = dayOf("2026-12-01");
  forecast.path = {{dayOf("2026-01-10"), 0.8, {0.1, 1.5}},
                   {dayOf("2026-03-01"), 0.9, {0.1, 1.7}},
                   {dayOf("2028-01-01"), 1.8, {-1.1, 4.7}}};
  data.forecast = forecast;
  return data;
}

TEST(HistoryForecast, IsDashedBesideItsOwnFit) {
  const auto chart = historyChart(borrowed(OutlookBasis::Fleet));
  ASSERT_THAT(chart.lines, SizeIs(2));
  EXPECT_EQ(chart.lines[0].name, "its own fitted drift");
  EXPECT_EQ(chart.lines[0].stroke, Stroke::Solid);
  EXPECT_EQ(chart.lines[1].name, "expected by the fleet");
  EXPECT_EQ(chart.lines[1].stroke, Stroke::Dashed);
  ASSERT_THAT(chart.bands, SizeIs(1));
  EXPECT_EQ(chart.bands[0].name, "95 % prediction by the fleet");
  EXPECT_EQ(chart.bands[0].outline, Stroke::Dashed);
  EXPECT_DOUBLE_EQ(chart.bands[0].edges[1].high, 1.7);
}

TEST(HistoryForecast, SaysHowMuchIsBorrowedAndWhatItsOwnChecksSay) {
  const auto chart = historyChart(borrowed(OutlookBasis::Fleet));
  EXPECT_EQ(chart.subtitle,
            "too few checks of its own; by tools alike +0.52 % a year, could leave ±4 % around 2026-12-01");
  EXPECT_THAT(chart.basis, HasSubstr("Drift borrowed from the fleet: 83 %, 7 tools alike"));
  EXPECT_THAT(chart.basis, HasSubstr("its own checks alone: +0.4 % a year"));
  EXPECT_EQ(shortDriftSentence(borrowed(OutlookBasis::Fleet)), "by tools alike, inside until 2026-12");
}

TEST(HistoryForecast, NamesTheDayOnWhichTheFleetsIntervalLeavesTheLimits) {
  const auto data = borrowed(OutlookBasis::Fleet);
  ASSERT_FALSE(data.drift.crossingDate);
  const auto chart = historyChart(data);
  EXPECT_THAT(chart.verticals,
              testing::Contains(testing::AllOf(testing::Field(&VerticalLine::role, Role::Crossing),
                                               testing::Field(&VerticalLine::date, dayOf("2026-12-01")))));
  EXPECT_EQ(dueDateOf(data), dayOf("2026-12-01"));
}

TEST(HistoryForecast, SaysPlainlyThatWearGoesByTightenings) {
  auto data = borrowed(OutlookBasis::Fleet);
  data.forecast->fleet.exposure = Exposure::Tightenings;
  EXPECT_THAT(historyChart(data).basis, HasSubstr("wear goes by tightenings, not by days"));
  EXPECT_THAT(historyChart(data).subtitle, HasSubstr("+0.52 % in 5,000 tightenings"));
}

TEST(HistoryForecast, AnAssumptionIsDottedAndCalledOne) {
  const auto chart = historyChart(borrowed(OutlookBasis::Assumption));
  EXPECT_EQ(chart.lines.back().stroke, Stroke::Dotted);
  EXPECT_EQ(chart.bands.back().name, "95 % prediction assumed");
  EXPECT_THAT(chart.basis, HasSubstr("Assumed, no record yet"));
  EXPECT_EQ(shortDriftSentence(borrowed(OutlookBasis::Assumption)), "assumed, no record yet");
}

TEST(HistoryForecast, ALongRecordBorrowsNothing) {
  auto data = test::demoHistory();
  const auto before = historyChart(data);
  data.forecast = HistoryForecast{.fleet = sevenTools(), .outlook = {}};
  data.forecast->outlook.basis = OutlookBasis::OwnRecord;
  const auto chart = historyChart(data);
  EXPECT_EQ(chart.subtitle, before.subtitle);
  EXPECT_EQ(chart.lines.size(), before.lines.size());
  EXPECT_EQ(chart.bands.size(), before.bands.size());
  EXPECT_THAT(chart.basis, HasSubstr("nothing borrowed"));
  EXPECT_THAT(chart.basis, Not(HasSubstr("alike")));
}

}  // namespace
}  // namespace steadyturn
