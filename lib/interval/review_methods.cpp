#include "review_methods.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steadyturn {

namespace {

constexpr double wellInside = 0.8;
constexpr double stepUp = 1.25;
constexpr double stepDown = 2.0 / 3;
constexpr double shortestDays = 30;
constexpr double longestDays = 1826;

}  // namespace

ReviewedInterval staircase(const std::vector<DatedDeviation>& checks, double permittedPercent,
                           int firstIntervalDays) {
  double days = firstIntervalDays;
  int longer = 0;
  int shorter = 0;
  int visits = 0;
  for (std::size_t i = 1; i < checks.size(); ++i) {
    if (checks[i].phase != Phase::AsFound) continue;
    ++visits;
    const double share = std::abs(checks[i].deviationPercent) / permittedPercent;
    if (share > wellInside && share <= 1) continue;
    ++(share > 1 ? shorter : longer);
    days = std::clamp(days * (share > 1 ? stepDown : stepUp), shortestDays, longestDays);
  }
  ReviewedInterval reviewed{
      .method = "staircase", .intervalDays = {}, .because = "no check as found after the first"};
  if (visits == 0) return reviewed;
  reviewed.intervalDays = static_cast<int>(std::lround(days));
  reviewed.because = fmt::format(
      "from {} days: of {} checks {} within 80 % of the limit (a quarter longer), {} outside (a third shorter)",
      firstIntervalDays, visits, longer, shorter);
  return reviewed;
}

ReviewedInterval controlChart(const DriftResult& own, Date lastCheck) {
  ReviewedInterval reviewed{.method = "control chart", .intervalDays = {}, .because = {}};
  if (!own.predictionInterval) {
    reviewed.because = "too few checks of its own for an interval";
  } else if (!own.crossingDate) {
    reviewed.because = "its own prediction interval stays inside the limit for 20 years";
  } else {
    reviewed.intervalDays = std::max(0, static_cast<int>((*own.crossingDate - lastCheck).count()));
    reviewed.because = "its own prediction interval reaches the limit on " + writeDate(*own.crossingDate);
  }
  return reviewed;
}

ReviewedInterval inUseTime(std::optional<double> tighteningsPerDay, double allowed) {
  ReviewedInterval reviewed{.method = "in-use time", .intervalDays = {}, .because = "no tightening on record"};
  if (!tighteningsPerDay || !(*tighteningsPerDay > 0)) return reviewed;
  reviewed.because = fmt::format("{:.0f} tightenings at {:.3g} a day", allowed, *tighteningsPerDay);
  const double days = allowed / *tighteningsPerDay;
  if (days <= 36525) reviewed.intervalDays = static_cast<int>(days);
  return reviewed;
}

}  // namespace steadyturn
