#include "forecast_path.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "outlook_words.h"

namespace steadyturn {
namespace {

Date dayOf(int day) { return std::chrono::sys_days(std::chrono::year(2021) / 1 / 1) + std::chrono::days(day); }

// Seven tools that drift by about 0.5 % a year, and one with a single check.
std::vector<FleetMember> sevenAndANewOne() {
  std::vector<FleetMember> members;
  for (int tool = 0; tool < 7; ++tool) {
    FleetMember made;
    for (int i = 0; i < 4; ++i) {
      made.add(
          {.date = dayOf(365 * i), .deviationPercent = (0.35 + 0.05 * tool) * i + 0.1 * std::sin(5.0 * tool + i)});
    }
    members.push_back(made);
  }
  members.emplace_back();
  members.back().add({.date = dayOf(1000), .deviationPercent = 0.4});
  return members;
}

constexpr std::size_t theNewOne = 7;
const DatedDeviation newest{.date = dayOf(1000), .deviationPercent = 0.4};
const OutlookRules rules{.asOf = dayOf(1200), .limitPercent = 4, .confidence = 0.95, .intervalDays = 365};

DriftResult ownOf(const std::vector<DatedDeviation>& checks) {
  return evaluateDrift({.limitPercent = rules.limitPercent,
                        .confidence = rules.confidence,
                        .asOf = rules.asOf,
                        .intervalDays = rules.intervalDays,
                        .checks = checks})
      .value();
}

const ForecastStep& stepOn(const std::vector<ForecastStep>& path, Date day) {
  return *std::ranges::find(path, day, &ForecastStep::date);
}

TEST(ForecastPath, SaysOnTheDayWhatTheOneDecisionSays) {
  const Fleet fleet(sevenAndANewOne(), 4, 0.95);
  ASSERT_TRUE(fleet.isEstimated());
  const auto word = fleetWordOf(fleet, theNewOne, rules);
  const auto decided = decideOutlook(ownOf({newest}), word, newest, rules);
  ASSERT_EQ(decided.basis, OutlookBasis::Fleet);
  const auto path = forecastPath(fleet, theNewOne, decided.basis, newest, rules, dayOf(2000), 10);
  EXPECT_EQ(path.front().date, newest.date);
  EXPECT_EQ(path.back().date, dayOf(2000));
  const auto& today = stepOn(path, rules.asOf);
  EXPECT_DOUBLE_EQ(today.deviationPercent, decided.deviationPercent);
  EXPECT_DOUBLE_EQ(today.interval.low, decided.interval.low);
  EXPECT_DOUBLE_EQ(today.interval.high, decided.interval.high);
  for (std::size_t i = 1; i < path.size(); ++i) {
    EXPECT_LT(path[i - 1].date, path[i].date);
    EXPECT_LT(path[i - 1].interval.high - path[i - 1].interval.low, path[i].interval.high - path[i].interval.low);
  }
}

TEST(ForecastPath, LeavesItsOwnRecordToItsRegression) {
  const Fleet fleet(sevenAndANewOne(), 4, 0.95);
  EXPECT_TRUE(forecastPath(fleet, 0, OutlookBasis::OwnRecord, newest, rules, dayOf(2000), 10).empty());
}

// The contract: location the newest mean deviation, standard uncertainty half the permissible deviation, infinite
// degrees of freedom; 1.959964 is the normal's 97.5 % quantile (any table).
TEST(ForecastPath, AnAssumptionStaysAtTheNewestDeviation) {
  const std::vector one{sevenAndANewOne().back()};
  const Fleet fleet(one, 4, 0.95);
  ASSERT_FALSE(fleet.isEstimated());
  const auto path = forecastPath(fleet, 0, OutlookBasis::Assumption, newest, rules, dayOf(1365), 4);
  ASSERT_FALSE(path.empty());
  EXPECT_NEAR(path.front().interval.high, 0.4 + 1.959964 * 2, 1e-5);
  EXPECT_NEAR(path.front().interval.low, 0.4 - 1.959964 * 2, 1e-5);
  for (const auto& step : path) EXPECT_DOUBLE_EQ(step.deviationPercent, 0.4);
}

// The model is linear in time and knows no direction: back from a tool's first check is forward from it, mirrored.
TEST(PastOutlook, IsTheForecastOfANewToolMirrored) {
  const Fleet fleet(sevenAndANewOne(), 4, 0.95);
  const double years = yearsBetween(newest.date, dayOf(1730));
  const auto ahead = fleet.outlook(theNewOne, dayOf(1730)).prediction;
  const auto past = outlookBefore(fleet, newest.deviationPercent, years);
  EXPECT_EQ(past.basis, OutlookBasis::Fleet);
  EXPECT_NEAR(past.deviationPercent, 2 * newest.deviationPercent - ahead.mean, 1e-12);
  EXPECT_NEAR(past.standardError, ahead.standardError, 1e-12);
  EXPECT_NEAR(past.degreesOfFreedom.value(), ahead.degreesOfFreedom.value(), 1e-9);
  // On the day itself: what was found, with the scatter of two checks.
  EXPECT_NEAR(outlookBefore(fleet, 5, 0).standardError, std::sqrt(2 * fleet.model().variances().residual), 0.01);
  EXPECT_DOUBLE_EQ(outlookBefore(fleet, 5, 0).deviationPercent, 5);
}

TEST(PastOutlook, OfAFleetWithoutARecordIsCalledAnAssumption) {
  const std::vector one{sevenAndANewOne().back()};
  EXPECT_EQ(outlookBefore(Fleet(one, 4, 0.95), 5, 1).basis, OutlookBasis::Assumption);
}

TEST(OutlookWords, SayHowMuchIsBorrowedOrAssumed) {
  FleetWord word;
  word.toolsThatSpeak = 7;
  word.outlook.slope.borrowed = 0.826;
  EXPECT_EQ(borrowedSentence(OutlookBasis::Fleet, word), "Drift borrowed from the fleet: 83 %, 7 tools alike");
  word.exposure = Exposure::Tightenings;
  EXPECT_EQ(borrowedSentence(OutlookBasis::Fleet, word),
            "Drift borrowed from the fleet: 83 %, 7 tools alike; wear goes by tightenings, not by days");
  EXPECT_NE(borrowedSentence(OutlookBasis::Assumption, word).find("Assumed, no record yet"), std::string::npos);
  EXPECT_NE(borrowedSentence(OutlookBasis::OwnRecord, word).find("nothing borrowed"), std::string::npos);
}

}  // namespace
}  // namespace steadyturn
