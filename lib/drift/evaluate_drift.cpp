#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "drift.h"

namespace steadyturn {

namespace {

constexpr int horizonDays = 7305;           // 20 years of 365.25 days
constexpr int longestIntervalDays = 36525;  // a century: anything longer is a slip
constexpr double largestDeviation = 1e9;    // keeps every square finite

void requireNumber(Problems& problems, bool good, std::string field, double found, std::string accepted) {
  if (!good)
    problems.push_back(
        {.field = std::move(field), .found = fmt::format("{}", found), .accepted = std::move(accepted)});
}

Problems problemsOf(const DriftInput& input) {
  Problems problems;
  requireNumber(problems, std::isfinite(input.limitPercent) && input.limitPercent > 0, "limit_percent",
                input.limitPercent, "a number above 0");
  requireNumber(problems, input.confidence > 0 && input.confidence < 1, "confidence", input.confidence,
                "a number above 0 and below 1, such as 0.95");
  if (input.intervalDays < 1 || input.intervalDays > longestIntervalDays) {
    problems.push_back({.field = "interval_days",
                        .found = fmt::format("{}", input.intervalDays),
                        .accepted = fmt::format("a whole number of days from 1 to {}", longestIntervalDays)});
  }
  if (input.checks.empty())
    problems.push_back({.field = "checks", .found = "none", .accepted = "at least one check"});
  for (std::size_t i = 0; i < input.checks.size(); ++i) {
    const double deviation = input.checks[i].deviationPercent;
    if (std::abs(deviation) <= largestDeviation) continue;  // false for NaN, too
    requireNumber(problems, false, fmt::format("checks[{}].deviation_percent", i), deviation,
                  "a number between -1e9 and 1e9");
  }
  return problems;
}

Date lastDate(std::span<const DatedDeviation> checks) {
  return std::max_element(checks.begin(), checks.end(), [](const auto& a, const auto& b) { return a.date < b.date; })
      ->date;
}

DriftState stateOf(const DriftResult& result, Date dueByPolicy, double confidence) {
  if (!result.pValue) return DriftState::Unknown;
  if (result.crossingDate && *result.crossingDate < dueByPolicy) return DriftState::Leaving;
  return *result.pValue < 1 - confidence ? DriftState::Drifting : DriftState::Steady;
}

}  // namespace

Result<DriftResult> evaluateDrift(const DriftInput& input) {
  if (Problems problems = problemsOf(input); !problems.empty()) return tl::unexpected(std::move(problems));

  const DriftFit fit(input.checks, input.confidence);
  DriftResult result{.slopePercentPerYear = fit.slopePercentPerYear(),
                     .slopeStandardError = fit.slopeStandardError(),
                     .slopeInterval = fit.slopeInterval(),
                     .pValue = fit.pValue(),
                     .residualStandardDeviation = fit.residualStandardDeviation(),
                     .degreesOfFreedom = fit.degreesOfFreedom(),
                     .segments = fit.segments().size(),
                     .predictedPercent = {},
                     .predictionInterval = {},
                     .predictionStandardError = {},
                     .crossingDate = fit.crossing(input.asOf, input.limitPercent, horizonDays)};
  if (const auto prediction = fit.predict(input.asOf)) {
    result.predictedPercent = prediction->deviationPercent;
    result.predictionInterval = prediction->interval;
    result.predictionStandardError = prediction->standardError;
  }
  const Date dueByPolicy = lastDate(input.checks) + std::chrono::days(input.intervalDays);
  result.dueDate = std::min(dueByPolicy, result.crossingDate.value_or(dueByPolicy));
  result.state = stateOf(result, dueByPolicy, input.confidence);
  return result;
}

}  // namespace steadyturn
