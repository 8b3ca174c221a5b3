#include "axis_ticks.h"

#include <gmock/gmock.h>

#include "demo_reports.h"

namespace steadyturn {
namespace {

using testing::ElementsAre;

AxisRange between(const char* from, const char* to) {
  return {axisPlace(parseDate(from, "from").value()), axisPlace(parseDate(to, "to").value())};
}

std::vector<std::string> labels(const std::vector<Tick>& ticks) {
  std::vector<std::string> words;
  for (const auto& tick : ticks) words.push_back(tick.label);
  return words;
}

TEST(DateTicks, AreYearsForAHistory) {
  EXPECT_THAT(labels(dateTicks(between("2019-11-20", "2024-03-01"), 8)),
              ElementsAre("2020", "2021", "2022", "2023", "2024"));
}

TEST(DateTicks, AreQuartersForTwoYears) {
  EXPECT_THAT(labels(dateTicks(between("2024-02-01", "2025-04-15"), 8)),
              ElementsAre("2024-04", "2024-07", "2024-10", "2025-01", "2025-04"));
}

TEST(DateTicks, AreMonthsForHalfAYear) {
  EXPECT_THAT(labels(dateTicks(between("2024-01-15", "2024-05-10"), 8)),
              ElementsAre("2024-02", "2024-03", "2024-04", "2024-05"));
}

TEST(DateTicks, AreDaysForAWeek) {
  EXPECT_THAT(labels(dateTicks(between("2024-02-27", "2024-03-01"), 8)),
              ElementsAre("2024-02-27", "2024-02-28", "2024-02-29", "2024-03-01"));
}

TEST(DateTicks, StayFewForCenturiesAndBefore1970) {
  EXPECT_LE(dateTicks(between("1900-01-01", "2100-01-01"), 8).size(), 9u);
  EXPECT_THAT(labels(dateTicks(between("1968-11-20", "1971-03-01"), 4)), ElementsAre("1969", "1970", "1971"));
}

TEST(ValueTicks, AreRoundAndSigned) {
  EXPECT_THAT(labels(valueTicks({-4.6, 6.1}, 8)), ElementsAre("−4", "−2", "0", "+2", "+4", "+6"));
  EXPECT_THAT(labels(valueTicks({-0.31, 0.22}, 8)), ElementsAre("−0.3", "−0.2", "−0.1", "0", "+0.1", "+0.2"));
}

TEST(ValueRange, ShowsBothLimitsAndEveryBar) {
  const auto chart = historyChart(test::demoHistory());
  const auto range = valueRange(chart);
  EXPECT_LT(range.low, -4);
  EXPECT_GT(range.high, 4.4 + 0.6);  // the point that failed, with W
}

TEST(ValueRange, IsNotPressedFlatByABandThatOpensWide) {
  auto chart = historyChart(test::demoHistory());
  chart.bands.back().edges.back().high = 5000;
  EXPECT_LT(valueRange(chart).high, 15);
}

TEST(AxisRanges, ExistForAnEmptyChart) {
  const ChartModel empty;
  EXPECT_LT(valueRange(empty).low, valueRange(empty).high);
  EXPECT_LT(acrossRange(empty).low, acrossRange(empty).high);
}

}  // namespace
}  // namespace steadyturn
