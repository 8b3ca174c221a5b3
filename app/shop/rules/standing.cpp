#include "standing.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace steadyturn {

namespace {

// Two statements of one set-point (20 N·m, 14.75 lbf·ft rounded) differ by less than this share.
constexpr double sameTarget = 1e-3;

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
  const double wanted = point.target.torque().newtonMetres();
  for (auto& one : series) {
    const bool same = std::abs(one.target.torque().newtonMetres() - wanted) <= sameTarget * wanted;
    if (same && one.direction == point.direction) return one;
  }
  return series.emplace_back(
      DriftSeries{.target = point.target, .direction = point.direction, .points = {}, .drift = {}});
}

void evaluate(DriftSeries& series, const Tool& tool, Date asOf, const Policy& policy) {
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
}

}  // namespace

ToolDrift driftOf(const Tool& tool, const std::vector<PointSummary>& summaries, Date asOf, const Policy& policy) {
  ToolDrift result{.tool = tool, .series = {}, .dueDate = {}, .state = DriftState::Unknown, .worst = 0};
  for (const auto& point : summaries) {
    if (point.date <= asOf) seriesFor(result.series, point).points.push_back(point);
  }
  std::sort(result.series.begin(), result.series.end(), [](const auto& a, const auto& b) {
    return std::tuple(a.target.torque(), a.direction) < std::tuple(b.target.torque(), b.direction);
  });
  for (std::size_t i = 0; i < result.series.size(); ++i) {
    auto& series = result.series[i];
    evaluate(series, tool, asOf, policy);
    const auto& worst = result.series[result.worst].drift;
    const bool graver = gravity(series.drift.state) > gravity(worst.state) ||
                        (series.drift.state == worst.state && series.drift.dueDate < worst.dueDate);
    if (graver) result.worst = i;
    if (!result.dueDate || series.drift.dueDate < *result.dueDate) result.dueDate = series.drift.dueDate;
  }
  if (!result.series.empty()) result.state = result.series[result.worst].drift.state;
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
    overview.predictedPercent = worst.drift.predictedPercent;
    overview.predictionInterval = worst.drift.predictionInterval;
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
