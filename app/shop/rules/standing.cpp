#include "standing.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "outlook_words.h"

namespace steadyturn {

namespace {

int gravity(DriftState state) {
  switch (state) {
    case DriftState::Leaving:
      return 3;
    case DriftState::Drifting:
      return 2;
    case DriftState::Unknown:
      return 1;
    case DriftState::Steady:
      return 0;
  }
  return 0;
}

DriftSeries& seriesFor(std::vector<DriftSeries>& series, const PointSummary& point) {
  for (auto& one : series) {
    if (one.direction == point.direction && sameSetPoint(point.target, one.target)) return one;
  }
  return series.emplace_back(DriftSeries{
      .target = point.target, .direction = point.direction, .points = {}, .drift = {}, .fleet = {}, .outlook = {}});
}

void evaluate(DriftSeries& series, const Tool& tool, const FleetBook& book, Date asOf, const Policy& policy) {
  DriftInput input{.limitPercent = tool.permittedPercent(),
                   .confidence = policy.confidence,
                   .asOf = asOf,
                   .intervalDays = tool.intervalDays.value_or(policy.intervalDays),
                   .checks = {}};
  input.checks.reserve(series.points.size());
  for (const auto& point : series.points) {
    input.checks.push_back({.date = point.date, .phase = point.phase, .deviationPercent = point.meanDeviation});
  }
  if (const auto result = evaluateDrift(input)) series.drift = *result;
  const OutlookRules rules{.asOf = asOf,
                           .limitPercent = input.limitPercent,
                           .confidence = input.confidence,
                           .intervalDays = input.intervalDays};
  if (const auto place = book.find(tool.id, series.target, series.direction)) {
    series.fleet = fleetWordOf(*place->fleet, place->member, rules);
    series.fleet.group = place->group;
  }
  series.outlook = decideOutlook(series.drift, series.fleet, input.checks.back(), rules);
}

}  // namespace

ToolDrift driftOf(const Tool& tool, const std::vector<PointSummary>& summaries, const FleetBook& book, Date asOf,
                  const Policy& policy) {
  ToolDrift result{.tool = tool, .series = {}, .dueDate = {}, .state = DriftState::Unknown, .worst = 0};
  for (const auto& point : summaries) {
    if (point.date <= asOf) seriesFor(result.series, point).points.push_back(point);
  }
  std::sort(result.series.begin(), result.series.end(), [](const auto& a, const auto& b) {
    return std::tuple(a.target.torque(), a.direction) < std::tuple(b.target.torque(), b.direction);
  });
  for (std::size_t i = 0; i < result.series.size(); ++i) {
    auto& series = result.series[i];
    evaluate(series, tool, book, asOf, policy);
    const auto& outlook = series.outlook;
    const auto& worst = result.series[result.worst].outlook;
    const bool graver = gravity(outlook.state) > gravity(worst.state) ||
                        (outlook.state == worst.state && outlook.dueDate < worst.dueDate);
    if (graver) result.worst = i;
    if (!result.dueDate || outlook.dueDate < *result.dueDate) result.dueDate = outlook.dueDate;
  }
  if (!result.series.empty()) result.state = result.series[result.worst].outlook.state;
  return result;
}

Verdict newestVerdict(const std::vector<PointSummary>& summaries) {
  if (summaries.empty()) return Verdict::Fail;
  auto verdict = Verdict::Pass;
  for (const auto direction : {Direction::Clockwise, Direction::Counterclockwise}) {
    const auto newest = std::find_if(summaries.rbegin(), summaries.rend(),
                                     [&](const auto& point) { return point.direction == direction; });
    for (auto point = newest; point != summaries.rend() && point->check == newest->check; ++point) {
      verdict = std::max(verdict, point->verdict);
    }
  }
  return verdict;
}

static Standing standingOf(const ToolOverview& overview, Date asOf) {
  if (overview.tool.status == ToolStatus::Retired) return Standing::Retired;
  if (overview.tool.status == ToolStatus::Held) return Standing::Held;
  if (!overview.lastCheck) return Standing::NeverChecked;
  if (*overview.lastVerdict > Verdict::ConditionalPass) return Standing::Failed;
  if (*overview.dueDate < asOf) return Standing::Overdue;
  if (overview.state == DriftState::Leaving) return Standing::Leaving;
  if (*overview.dueDate <= asOf + std::chrono::days(dueSoonDays)) return Standing::DueSoon;
  return Standing::Ready;
}

ToolOverview overviewOf(const ToolDrift& drift, const std::vector<PointSummary>& summaries, Date asOf) {
  ToolOverview overview;
  overview.tool = drift.tool;
  overview.limitPercent = drift.tool.permittedPercent();
  overview.state = drift.state;
  overview.dueDate = drift.dueDate;
  if (!drift.series.empty()) {
    const auto& worst = drift.series[drift.worst];
    overview.worstTarget = worst.target;
    overview.slopePercentPerYear = worst.drift.slopePercentPerYear;
    overview.predictedPercent = worst.outlook.deviationPercent;
    overview.predictionInterval = worst.outlook.interval;
    overview.basis = worst.outlook.basis;
    overview.basisWords = borrowedSentence(worst.outlook.basis, worst.fleet);
    std::vector<PointSummary> known;
    std::copy_if(summaries.begin(), summaries.end(), std::back_inserter(known),
                 [asOf](const auto& point) { return point.date <= asOf; });
    overview.lastCheck = known.back().date;
    overview.lastVerdict = newestVerdict(known);
  }
  overview.standing = standingOf(overview, asOf);
  return overview;
}

}  // namespace steadyturn
