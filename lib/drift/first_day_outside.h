// The day on which a prediction interval first reaches outside its limits.
#pragma once

#include <optional>

#include "drift.h"

namespace steadyturn {

// `intervalOn(day)` is the interval. REQUIRES: the days on which it lies inside are one unbroken stretch: once
// outside, outside for good. Then halving finds the very day; nothing within `horizonDays` of `from`.
template <typename IntervalOn>
std::optional<Date> firstDayOutside(Date from, double limitPercent, int horizonDays, const IntervalOn& intervalOn) {
  const auto outside = [&](int days) {
    const Interval interval = intervalOn(from + std::chrono::days(days));
    return interval.high > limitPercent || interval.low < -limitPercent;
  };
  if (outside(0)) return from;
  if (!outside(horizonDays)) return std::nullopt;
  int inside = 0;
  int beyond = horizonDays;
  while (beyond - inside > 1) {
    const int middle = inside + (beyond - inside) / 2;
    (outside(middle) ? beyond : inside) = middle;
  }
  return from + std::chrono::days(beyond);
}

}  // namespace steadyturn
