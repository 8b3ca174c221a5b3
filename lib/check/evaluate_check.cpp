#include <algorithm>
#include <cmath>
#include <utility>

#include "budget.h"
#include "check.h"
#include "notes.h"
#include "refuse_check.h"
#include "tolerance.h"

namespace steadyturn {
namespace {

std::vector<double> deviationsOf(const SetPointReadings& point) {
  std::vector<double> deviations;
  for (StatedTorque reading : point.readings) {
    deviations.push_back(deviationPercent(point.target.value, reading.in(point.target.unit)));
  }
  return deviations;
}

PointResult evaluatePoint(const CheckInput& check, const SetPointReadings& point, double limit,
                          std::vector<std::string>& notEvaluated) {
  PointResult result{.target = point.target, .deviationsPercent = deviationsOf(point)};
  result.meanDeviationPercent = mean(result.deviationsPercent);
  result.repeatabilityPercent = standardDeviation(result.deviationsPercent);

  Budget budget = budgetOf(check, point.target, result.repeatabilityPercent, point.readings.size());
  for (std::string_view source : budget.notEvaluated) {
    if (std::ranges::find(notEvaluated, source) == notEvaluated.end()) notEvaluated.emplace_back(source);
  }
  result.budget = std::move(budget.entries);
  result.standardUncertaintyPercent = budget.standardUncertaintyPercent;
  result.expandedUncertaintyPercent = result.coverageFactor * result.standardUncertaintyPercent;
  result.intervalPercent = std::abs(result.meanDeviationPercent) + result.expandedUncertaintyPercent +
                           std::abs(check.reference.errorPercent);

  result.withinLimit = std::ranges::all_of(result.deviationsPercent,
                                           [limit](double deviation) { return atMost(std::abs(deviation), limit); });
  result.conformityProbability =
      conformityProbability(result.meanDeviationPercent, result.standardUncertaintyPercent, -limit, limit);
  result.verdict =
      decide(check.rule, result.meanDeviationPercent, result.expandedUncertaintyPercent, limit, result.withinLimit);
  return result;
}

}  // namespace

double deviationPercent(double toolValue, double referenceValue) {
  return (toolValue - referenceValue) / referenceValue * 100;
}

Result<CheckResult> evaluateCheck(const CheckInput& check) {
  if (Problems problems = problemsOf(check); !problems.empty()) return tl::unexpected(std::move(problems));

  CheckResult result;
  result.limitPercent = check.limitPercent.value_or(0);
  if (!check.limitPercent) result.limitPercent = permissibleDeviationPercent(check.kind, check.maximum);
  result.verdict = Verdict::Pass;
  for (const SetPointReadings& point : check.points) {
    result.points.push_back(evaluatePoint(check, point, result.limitPercent, result.notEvaluated));
    result.verdict = std::max(result.verdict, result.points.back().verdict);
  }
  result.notes = notesOn(check, result.limitPercent);
  return result;
}

}  // namespace steadyturn
