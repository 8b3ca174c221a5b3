#include <gtest/gtest.h>

#include <limits>

#include "day.h"
#include "drift.h"

namespace steadyturn {
namespace {

DatedDeviation found(std::string_view date, double percent) { return {day(date), Phase::AsFound, percent}; }
DatedDeviation left(std::string_view date, double percent) { return {day(date), Phase::AsLeft, percent}; }

DriftInput input(std::vector<DatedDeviation> checks) {
  return {.limitPercent = 4,
          .confidence = 0.95,
          .asOf = day("2026-06-01"),
          .intervalDays = 365,
          .checks = std::move(checks)};
}

const auto example =
    input({found("2023-01-16", 0.2), found("2024-01-10", 1.1), left("2024-01-10", 0.1), found("2025-01-14", 0.9)});

// The contract's example. One degree of freedom: t = 12.7, so wide an interval is outside ±4 % on the day already.
// By hand: Σx̃² = (359² + 370²)/2 / 365.25², Σx̃ỹ = (359·0.9 + 370·0.8)/2 / 365.25.
TEST(EvaluateDrift, TheContractsExample) {
  const DriftResult result = evaluateDrift(example).value();
  const double slope = (359 * 0.9 + 370 * 0.8) / (359.0 * 359 + 370 * 370) * 365.25;
  EXPECT_NEAR(result.slopePercentPerYear.value(), slope, 1e-12);
  EXPECT_EQ(result.degreesOfFreedom, 1);
  EXPECT_EQ(result.segments, 2U);
  // Newest segment: mean 0.5 on day 185 after 2024-01-10; as of day 873.
  EXPECT_NEAR(result.predictedPercent.value(), 0.5 + slope * (873 - 185) / 365.25, 1e-12);
  ASSERT_TRUE(result.predictionInterval);
  const double half = (result.predictionInterval->high - result.predictionInterval->low) / 2;
  EXPECT_NEAR(half / result.predictionStandardError.value(), 12.706, 0.0005);
  EXPECT_LT(result.pValue.value(), 0.05);
  if (result.predictionInterval->high > 4) {
    EXPECT_EQ(result.crossingDate, day("2026-06-01"));
  }
  // Overdue by policy: the last check and 365 days lie before the day asked for.
  EXPECT_EQ(result.dueDate, day("2026-01-14"));
  EXPECT_EQ(result.state, DriftState::Drifting);
}

TEST(EvaluateDrift, OneCheckIsUnknownAndDueByPolicy) {
  const DriftResult result = evaluateDrift(input({found("2026-03-01", 1.5)})).value();
  EXPECT_EQ(result.state, DriftState::Unknown);
  EXPECT_EQ(result.degreesOfFreedom, -1);
  EXPECT_EQ(result.segments, 1U);
  EXPECT_FALSE(result.slopePercentPerYear || result.slopeStandardError || result.slopeInterval || result.pValue ||
               result.residualStandardDeviation || result.predictedPercent || result.predictionInterval ||
               result.predictionStandardError || result.crossingDate);
  EXPECT_EQ(result.dueDate, day("2027-03-01"));
}

TEST(EvaluateDrift, TwoChecksHaveASlopeButNoInterval) {
  const DriftResult result = evaluateDrift(input({found("2025-01-01", 0), found("2026-01-01", 3.9)})).value();
  EXPECT_EQ(result.state, DriftState::Unknown);
  EXPECT_EQ(result.degreesOfFreedom, 0);
  EXPECT_NEAR(result.slopePercentPerYear.value(), 3.9 / 365 * 365.25, 1e-12);
  EXPECT_NEAR(result.predictedPercent.value(), 3.9 + 3.9 / 365 * 151, 1e-12);
  EXPECT_FALSE(result.predictionInterval || result.pValue || result.crossingDate || result.slopeStandardError);
  EXPECT_EQ(result.dueDate, day("2027-01-01"));
}

TEST(EvaluateDrift, ChecksOfOneDayCannotSayWhereATooIsGoing) {
  const DriftResult result =
      evaluateDrift(input({found("2026-01-01", 0.1), found("2026-01-01", 0.2), found("2026-01-01", 0.4)})).value();
  EXPECT_EQ(result.degreesOfFreedom, 1);
  EXPECT_EQ(result.state, DriftState::Unknown);
  EXPECT_FALSE(result.slopePercentPerYear || result.predictedPercent || result.residualStandardDeviation);
  EXPECT_EQ(result.dueDate, day("2027-01-01"));
}

const std::vector<DatedDeviation> quiet{
    found("2022-03-01", 0.3),  found("2022-09-01", 0.2),  found("2023-03-01", 0.35),
    found("2023-09-01", 0.25), found("2024-03-01", 0.3),  found("2024-09-01", 0.2),
    found("2025-03-01", 0.35), found("2025-09-01", 0.25), found("2026-03-01", 0.3)};

TEST(EvaluateDrift, AQuietToolIsSteadyAndKeepsThePolicysInterval) {
  const DriftResult result = evaluateDrift(input(quiet)).value();
  EXPECT_EQ(result.state, DriftState::Steady);
  EXPECT_GT(result.pValue.value(), 0.05);
  EXPECT_FALSE(result.crossingDate);
  EXPECT_EQ(result.dueDate, day("2027-03-01"));
}

// The same figures with 0.5 % a year on top: drifts for sure, yet stays inside for years.
TEST(EvaluateDrift, ASlowDriftFarFromTheLimitIsDrifting) {
  auto checks = quiet;
  for (auto& check : checks) check.deviationPercent += 0.5 * yearsBetween(quiet.front().date, check.date);
  const DriftResult result = evaluateDrift(input(checks)).value();
  EXPECT_EQ(result.state, DriftState::Drifting);
  ASSERT_TRUE(result.crossingDate);
  EXPECT_GT(*result.crossingDate, day("2028-01-01"));
  EXPECT_EQ(result.dueDate, day("2027-03-01"));
  // The interval keeps the limit on the day before, and not on the day.
  const DriftFit fit(checks, 0.95);
  EXPECT_LE(fit.predict(*result.crossingDate - std::chrono::days(1))->interval->high, 4);
  EXPECT_GT(fit.predict(*result.crossingDate)->interval->high, 4);
}

TEST(EvaluateDrift, AToolThatLeavesBeforeItsIntervalEndsIsDueThatDay) {
  auto checks = quiet;
  for (auto& check : checks) check.deviationPercent -= 0.95 * yearsBetween(quiet.front().date, check.date);
  const DriftResult result = evaluateDrift(input(checks)).value();
  EXPECT_EQ(result.state, DriftState::Leaving);
  ASSERT_TRUE(result.crossingDate);
  EXPECT_GT(*result.crossingDate, day("2026-06-01"));
  EXPECT_LT(*result.crossingDate, day("2027-03-01"));
  EXPECT_EQ(result.dueDate, *result.crossingDate);
}

TEST(EvaluateDrift, BeyondTwentyYearsThereIsNoCrossing) {
  auto checks = quiet;
  for (auto& check : checks) check.deviationPercent = 0.1 * yearsBetween(quiet.front().date, check.date);
  auto slow = input(checks);
  slow.limitPercent = 2.3;  // reached in the spring of 2045, 19 years on
  EXPECT_TRUE(evaluateDrift(slow)->crossingDate);
  slow.limitPercent = 2.5;  // 2047, 21 years on
  EXPECT_FALSE(evaluateDrift(slow)->crossingDate);
}

TEST(EvaluateDrift, TheLastCheckCountsForPolicyInAnyOrder) {
  auto checks = quiet;
  std::swap(checks.front(), checks.back());
  EXPECT_EQ(evaluateDrift(input(checks))->dueDate, day("2027-03-01"));
}

TEST(EvaluateDrift, NamesEveryWrongField) {
  DriftInput wrong = example;
  wrong.limitPercent = 0;
  wrong.confidence = 1;
  wrong.intervalDays = 0;
  wrong.checks[2].deviationPercent = std::numeric_limits<double>::quiet_NaN();
  wrong.checks[3].deviationPercent = std::numeric_limits<double>::infinity();
  const auto result = evaluateDrift(wrong);
  ASSERT_FALSE(result);
  std::vector<std::string> fields;
  for (const Problem& problem : result.error()) fields.push_back(problem.field);
  EXPECT_EQ(fields, (std::vector<std::string>{"limit_percent", "confidence", "interval_days",
                                              "checks[2].deviation_percent", "checks[3].deviation_percent"}));
  const auto none = evaluateDrift(input({}));
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error()[0].field, "checks");
}

TEST(DriftNames, ReadWhatTheyWrite) {
  EXPECT_EQ(parsePhase("as_found"), Phase::AsFound);
  EXPECT_EQ(parsePhase("as_left"), Phase::AsLeft);
  EXPECT_EQ(parsePhase("as left").error()[0].field, "phase");
  EXPECT_EQ(writeState(DriftState::Steady), "steady");
  EXPECT_EQ(writeState(DriftState::Drifting), "drifting");
  EXPECT_EQ(writeState(DriftState::Leaving), "leaving");
  EXPECT_EQ(writeState(DriftState::Unknown), "unknown");
}

}  // namespace
}  // namespace steadyturn
