#include "interval_risk.h"

#include <algorithm>

namespace steadyturn {

double probabilityInside(const ToolPlaces& tool, int days) {
  double least = 1;
  for (const FleetPlace& place : tool) {
    const Date day = place.fleet->member(place.member).last() + std::chrono::days(days);
    least = std::min(least, place.fleet->probabilityWithin(place.member, day, place.permittedPercent));
  }
  return least;
}

namespace {

double meanInside(std::span<const ToolPlaces> tools, int days) {
  double sum = 0;
  for (const ToolPlaces& tool : tools) sum += probabilityInside(tool, days);
  return sum / static_cast<double>(tools.size());
}

}  // namespace

std::vector<IntervalRisk> intervalRisks(std::span<const ToolPlaces> tools, std::span<const int> intervals) {
  std::vector<IntervalRisk> risks;
  for (const int days : intervals) {
    IntervalRisk one{.intervalDays = days};
    for (const ToolPlaces& tool : tools) {
      const double risk = 1 - probabilityInside(tool, days);
      one.risk += risk / static_cast<double>(tools.size());
      one.worstRisk = std::max(one.worstRisk, risk);
    }
    one.checksPerYear = static_cast<double>(tools.size()) * daysPerYear / days;
    risks.push_back(one);
  }
  return risks;
}

std::optional<int> longestInterval(std::span<const ToolPlaces> tools, double target) {
  constexpr int longest = 7305;  // 20 years
  const auto keeps = [&](int days) { return meanInside(tools, days) >= target; };
  if (tools.empty() || !keeps(1)) return std::nullopt;
  // A tool that drifts from one side of 0 to the other is at first safer, then less so: the first day that fails is
  // looked for by steps before it is halved down to.
  constexpr int step = 30;
  int kept = 1;
  while (kept + step <= longest && keeps(kept + step)) kept += step;
  if (kept + step > longest) return longest;
  int failed = kept + step;
  while (failed - kept > 1) {
    const int middle = kept + (failed - kept) / 2;
    (keeps(middle) ? kept : failed) = middle;
  }
  return kept;
}

}  // namespace steadyturn
