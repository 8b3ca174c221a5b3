#include <gsl/gsl_cdf.h>
#include <gtest/gtest.h>

#include "clopper_pearson.h"
#include "interval_risk.h"
#include "observed_reliability.h"
#include "reference_table.h"
#include "review_methods.h"

namespace steadyturn {
namespace {

using testing::ReferenceTable;

constexpr Date start = std::chrono::sys_days(std::chrono::year(2022) / 1 / 1);
DatedDeviation found(int day, double deviation, Phase phase = Phase::AsFound) {
  return {.date = start + std::chrono::days(day), .phase = phase, .deviationPercent = deviation};
}

TEST(ClopperPearson, MatchesPublishedBounds) {
  const auto table = ReferenceTable::load("clopper_pearson.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const auto number = [&](const char* column) { return table.figure(row, column); };
    const auto bounds = clopperPearson(static_cast<std::size_t>(number("successes").value),
                                       static_cast<std::size_t>(number("trials").value), number("confidence").value);
    EXPECT_NEAR(bounds.low, number("low").value, number("low").tolerance);
    EXPECT_NEAR(bounds.high, number("high").value, number("high").tolerance);
  }
}

TEST(ClopperPearson, TailsHoldHalfOfWhatIsLeft) {
  for (const unsigned trials : {3U, 17U, 200U}) {
    for (unsigned k = 0; k <= trials; k += 1 + trials / 5) {
      const auto bounds = clopperPearson(k, trials, 0.95);
      EXPECT_NEAR(k == 0 ? 0.025 : gsl_cdf_binomial_Q(k - 1, bounds.low, trials), 0.025, 1e-10);
      EXPECT_NEAR(k == trials ? 0.025 : gsl_cdf_binomial_P(k, bounds.high, trials), 0.025, 1e-10);
    }
  }
}

TEST(ObservedReliability, AVisitIsInsideWhenEverySetPointIs) {
  const std::vector<std::vector<PastChecks>> tools{
      {{.permittedPercent = 4, .checks = {found(0, 9), found(360, 1), found(730, 2)}, .tightenings = {}},
       {.permittedPercent = 4, .checks = {found(0, 0), found(360, 1), found(730, 5)}, .tightenings = {}}},
      {{.permittedPercent = 4, .checks = {found(0, 0), found(100, -3)}, .tightenings = {}}}};
  const auto all = observedReliability(tools, 0, 1e9, 0.95);
  EXPECT_EQ(all.checks, 3U);  // a first check says nothing of an interval
  EXPECT_EQ(all.inside, 2U);
  EXPECT_DOUBLE_EQ(all.meanDays, (360 + 370 + 100) / 3.0);
  EXPECT_LT(all.bounds->low, *all.share);
  const auto yearly = observedReliability(tools, 0.75 * 365, 1.25 * 365, 0.95);
  EXPECT_EQ(yearly.checks, 2U);
  EXPECT_EQ(yearly.inside, 1U);
  EXPECT_FALSE(observedReliability(tools, 1000, 2000, 0.95).share);
}

TEST(ReviewMethods, StaircaseGoesUpWellInsideAndDownOutside) {
  EXPECT_EQ(staircase({found(0, 0), found(365, 1)}, 4, 400).intervalDays, 500);     // a quarter longer
  EXPECT_EQ(staircase({found(0, 0), found(365, 3.2)}, 4, 400).intervalDays, 500);   // 80 % is well inside
  EXPECT_EQ(staircase({found(0, 0), found(365, -3.6)}, 4, 400).intervalDays, 400);  // between: stays
  EXPECT_EQ(staircase({found(0, 0), found(365, -4.1)}, 4, 300).intervalDays, 200);  // a third shorter
  EXPECT_EQ(staircase({found(0, 0), found(9, 5), found(9, 0, Phase::AsLeft), found(99, 1)}, 4, 300).intervalDays,
            250);
  EXPECT_FALSE(staircase({found(0, 0)}, 4, 365).intervalDays);
  EXPECT_EQ(staircase({found(0, 0), found(1, 9), found(2, 9)}, 4, 31).intervalDays, 30);
}

TEST(ReviewMethods, ControlChartCountsFromTheLastCheck) {
  DriftResult own;
  EXPECT_FALSE(controlChart(own, start).intervalDays);
  own.predictionInterval = Interval{-1, 1};
  EXPECT_FALSE(controlChart(own, start).intervalDays);
  own.crossingDate = start + std::chrono::days(500);
  EXPECT_EQ(controlChart(own, start + std::chrono::days(100)).intervalDays, 400);
  EXPECT_EQ(controlChart(own, start + std::chrono::days(600)).intervalDays, 0);
}

TEST(ReviewMethods, InUseTimeFollowsTheCount) {
  EXPECT_EQ(inUseTime(20.0, 5000).intervalDays, 250);
  EXPECT_FALSE(inUseTime({}, 5000).intervalDays);
  EXPECT_FALSE(inUseTime(0.0, 5000).intervalDays);
}

// Nothing on record: the assumption is made so that 95 % are inside after twelve months.
TEST(IntervalRisk, AnUnknownToolAtZeroMayGoTwelveMonths) {
  FleetMember single;
  single.add(found(0, 0));
  const Fleet fleet(std::vector{single}, 4, 0.95);
  const std::vector<ToolPlaces> tools{{{.fleet = &fleet, .member = 0, .permittedPercent = 4}}};
  const auto longest = longestInterval(tools, 0.95);
  ASSERT_TRUE(longest);
  EXPECT_EQ(*longest, 373);  // 4 / 1.95996 = √(0.5 + 3.5 t²), t = 1.0233 years, by hand
  EXPECT_GE(probabilityInside(tools[0], *longest), 0.95);
  EXPECT_LT(probabilityInside(tools[0], *longest + 1), 0.95);
  EXPECT_FALSE(longestInterval(tools, 0.9999999999999));

  const std::vector<int> intervals{182, 365};
  const auto risks = intervalRisks(tools, intervals);
  EXPECT_LT(risks[0].risk, risks[1].risk);
  EXPECT_NEAR(risks[1].risk, 0.05, 0.005);
  EXPECT_DOUBLE_EQ(risks[1].checksPerYear, 365.25 / 365);
}

TEST(IntervalRisk, TheWorstSetPointAndTheWorstToolAreSeen) {
  FleetMember good, poor;
  good.add(found(0, 0));
  poor.add(found(0, 3.5));
  const Fleet fleet(std::vector{good, poor}, 4, 0.95);
  const FleetPlace first{.fleet = &fleet, .member = 0, .permittedPercent = 4};
  const FleetPlace second{.fleet = &fleet, .member = 1, .permittedPercent = 4};
  EXPECT_DOUBLE_EQ(probabilityInside({first, second}, 90), probabilityInside({second}, 90));
  const std::vector<ToolPlaces> tools{{first}, {second}};
  const std::vector<int> intervals{90};
  const auto risk = intervalRisks(tools, intervals).front();
  EXPECT_DOUBLE_EQ(risk.worstRisk, 1 - probabilityInside({second}, 90));
  EXPECT_DOUBLE_EQ(risk.risk, 1 - (probabilityInside({first}, 90) + probabilityInside({second}, 90)) / 2);
}

}  // namespace
}  // namespace steadyturn
