#include "fleet.h"

#include <gtest/gtest.h>

#include <cmath>

#include "backtest.h"
#include "fleet_assumption.h"

namespace steadyturn {
namespace {

constexpr Date firstDay = std::chrono::sys_days(std::chrono::year(2021) / 1 / 1);
Date onDay(int day) { return firstDay + std::chrono::days(day); }

FleetMember member(std::vector<DatedDeviation> checks) {
  FleetMember made;
  for (const auto& check : checks) made.add(check);
  return made;
}

// Yearly checks of six tools that drift by 0.3 to 0.8 % a year, scattered by a fixed pattern.
std::vector<FleetMember> sixTools() {
  std::vector<FleetMember> members;
  for (int tool = 0; tool < 6; ++tool) {
    FleetMember made;
    for (int i = 0; i < 5; ++i) {
      const double scatter = 0.15 * std::sin(7.0 * tool + 3.0 * i);
      made.add({.date = onDay(365 * i + 10 * tool), .deviationPercent = (0.3 + 0.1 * tool) * i + scatter});
    }
    members.push_back(made);
  }
  return members;
}

TEST(FleetAssumption, KeepsNinetyFivePercentInsideAfterTwelveMonths) {
  for (const double permitted : {4.0, 6.0}) {
    const std::vector one{member({{.date = onDay(0), .deviationPercent = 0}})};
    const Fleet fleet(one, permitted, 0.95);
    EXPECT_FALSE(fleet.isEstimated());
    const auto next = fleet.outlook(0, onDay(365)).prediction;
    // The contract's assumption for a tool whose drift is unknown: half its permissible deviation.
    EXPECT_NEAR(next.standardError, permitted / 2, 0.002 * permitted);
    EXPECT_FALSE(next.degreesOfFreedom);
    EXPECT_NEAR(fleet.probabilityWithin(0, onDay(365), permitted), 0.95, 0.01);
  }
}

TEST(FleetAssumption, SaysItsFigures) {
  const auto text = assumptionText(4);
  EXPECT_NE(text.find("Assumed"), std::string::npos);
  EXPECT_NE(text.find("ISO 6789"), std::string::npos);
  EXPECT_NE(text.find("1.9 %"), std::string::npos);  // √(2² − 2 · 0.5²), by hand
  EXPECT_NE(text.find("0.5 %"), std::string::npos);
}

TEST(Fleet, ANewToolLearnsFromTheOthers) {
  auto members = sixTools();
  members.push_back(member({{.date = onDay(1500), .deviationPercent = 0.4}}));
  const Fleet fleet(members, 4, 0.95);
  ASSERT_TRUE(fleet.isEstimated());
  EXPECT_EQ(fleet.toolsThatSpeak(), 6U);
  EXPECT_EQ(fleet.checks(), 31U);
  const auto now = fleet.outlook(6, onDay(1500));
  const auto later = fleet.outlook(6, onDay(1500 + 365));
  EXPECT_DOUBLE_EQ(now.prediction.mean, 0.4);
  EXPECT_NEAR(later.prediction.mean - 0.4, fleet.model().groupSlope().slope, 0.01);
  EXPECT_DOUBLE_EQ(later.slope.borrowed, 1);
  EXPECT_LT(later.prediction.standardError, 1);
  EXPECT_GT(later.prediction.standardError, now.prediction.standardError);
}

TEST(Fleet, CrossingIsTheFirstDayOutside) {
  const Fleet fleet(sixTools(), 4, 0.95);
  const auto crossing = fleet.crossing(5, onDay(1600), 4, 7305);
  ASSERT_TRUE(crossing);
  EXPECT_GT(fleet.outlook(5, *crossing).interval.high, 4);
  EXPECT_LE(fleet.outlook(5, *crossing - std::chrono::days(1)).interval.high, 4);
  EXPECT_EQ(fleet.crossing(5, onDay(9000), 4, 7305), onDay(9000));
  EXPECT_FALSE(fleet.crossing(5, onDay(1600), 1000, 7305));
}

// Tools that wear by use, used very unequally.
std::vector<FleetMember> wornByUse(bool counted) {
  std::vector<FleetMember> members;
  for (int tool = 0; tool < 8; ++tool) {
    FleetMember made;
    double uses = 0;
    for (int i = 0; i < 5; ++i) {
      const double deviation = 0.8 * uses / tighteningsPerInterval + 0.05 * std::sin(5.0 * tool + 2.0 * i);
      made.add({.date = onDay(365 * i), .deviationPercent = deviation}, counted ? std::optional(uses) : std::nullopt);
      uses += 500.0 * (1 + (3 * tool + 5 * i) % 7);
    }
    members.push_back(made);
  }
  return members;
}

TEST(Fleet, GoesByTighteningsWhereTheyPredictBetter) {
  const Fleet counted(wornByUse(true), 4, 0.95);
  EXPECT_EQ(counted.exposure(), Exposure::Tightenings);
  EXPECT_GT(counted.exposureScores().tightenings.value(), counted.exposureScores().days.value());
  EXPECT_EQ(counted.exposureScores().checks, 8U);
  EXPECT_NEAR(counted.model().groupSlope().slope, 0.8, 0.05);
  const Fleet uncounted(wornByUse(false), 4, 0.95);
  EXPECT_EQ(uncounted.exposure(), Exposure::Days);
  EXPECT_FALSE(uncounted.exposureScores().tightenings);
}

TEST(FleetMember, DaysToComeGoOnAsFastAsBefore) {
  FleetMember tool;
  tool.add({.date = onDay(0), .deviationPercent = 0}, 100.0);
  tool.add({.date = onDay(100), .deviationPercent = 1}, 600.0);
  EXPECT_DOUBLE_EQ(tool.at(Exposure::Tightenings, onDay(120)), 700 / tighteningsPerInterval);
  tool.countUpTo(onDay(200), 2100);  // busier since: 10 a day
  EXPECT_DOUBLE_EQ(tool.at(Exposure::Tightenings, onDay(210)), 2200 / tighteningsPerInterval);
}

TEST(ForecastScore, IsTheMeanLogDensityAndTheShareInside) {
  ForecastScore score;
  EXPECT_FALSE(score.meanLogScore());
  score.add({.mean = 0, .standardError = 1, .degreesOfFreedom = {}}, 0);
  score.add({.mean = 0, .standardError = 1, .degreesOfFreedom = {}}, 1.5);
  EXPECT_NEAR(*score.meanLogScore(), -0.9189385332046727 - 1.125 / 2, 1e-12);  // −½ ln 2π − z²/2
  EXPECT_DOUBLE_EQ(*score.coverage(0), 0.5);
  EXPECT_DOUBLE_EQ(*score.coverage(1), 0.5);
  EXPECT_DOUBLE_EQ(*score.coverage(2), 1);
  // Student t with one degree of freedom is Cauchy's: density 1 / (π (1 + z²)) / scale.
  EXPECT_NEAR(logDensity({.mean = 1, .standardError = 2, .degreesOfFreedom = 1}, 5), std::log(1 / (M_PI * 5) / 2),
              1e-12);
}

std::vector<PastChecks> pastOfSixTools() {
  std::vector<PastChecks> group;
  for (int tool = 0; tool < 6; ++tool) {
    PastChecks past{.permittedPercent = 4, .checks = {}, .tightenings = {}};
    for (int i = 0; i < 5; ++i) {
      const double scatter = 0.15 * std::sin(7.0 * tool + 3.0 * i);
      past.checks.push_back(
          {.date = onDay(365 * i + 10 * tool), .deviationPercent = (0.3 + 0.1 * tool) * i + scatter});
    }
    group.push_back(past);
  }
  return group;
}

TEST(Backtest, PredictsEachCheckFromEarlierDaysOnly) {
  const auto scores = backtest(pastOfSixTools(), Exposure::Days);
  EXPECT_EQ(scores.fleet.forecasts(), 24U);  // all but each tool's first
  EXPECT_EQ(scores.lastValue.forecasts(), 24U);
  EXPECT_EQ(scores.ownRegression.forecasts(), 12U);  // from the fourth check on
  EXPECT_EQ(scores.fleetWhereOwnSpeaks.forecasts(), 12U);
  EXPECT_GT(scores.assumed, 0U);
  EXPECT_LT(scores.assumed, 24U);

  // What came later changes no score of what came before.
  auto cut = pastOfSixTools();
  for (auto& tool : cut) tool.checks.pop_back();
  auto changed = pastOfSixTools();
  for (auto& tool : changed) tool.checks.back().deviationPercent = 99;
  const auto before = backtest(cut, Exposure::Days);
  EXPECT_EQ(before.fleet.forecasts(), 18U);
  EXPECT_LT(*backtest(changed, Exposure::Days).fleet.meanLogScore(), *before.fleet.meanLogScore());
}

TEST(Backtest, ScoresTheToolsAskedForWhileAllSpeak) {
  const auto group = pastOfSixTools();
  std::vector<bool> asked(group.size(), false);
  asked[3] = true;
  EXPECT_EQ(backtest(group, Exposure::Days, asked).fleet.forecasts(), 4U);
}

TEST(Backtest, ACheckAfterAnAdjustmentIsPredictedFromTheLevelAsLeft) {
  auto group = pastOfSixTools();
  group[0].checks.insert(group[0].checks.begin() + 4,
                         {.date = group[0].checks[3].date, .phase = Phase::AsLeft, .deviationPercent = -3});
  std::vector<bool> asked(group.size(), false);
  asked[0] = true;
  const auto scores = backtest(group, Exposure::Days, asked);
  EXPECT_EQ(scores.fleet.forecasts(), 4U);  // the check as left is no forecast's
  EXPECT_LT(*scores.lastValue.coverage(2), 1);
}

}  // namespace
}  // namespace steadyturn
