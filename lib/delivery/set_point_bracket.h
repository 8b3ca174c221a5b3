// Where a setting lies among set-points: the two around it, and how far along it is between them.
#pragma once

#include <algorithm>
#include <optional>
#include <vector>

#include "torque.h"

namespace steadyturn {

template <typename Point>  // has a `target`
struct SetPointBracket {
  const Point& lower;
  const Point& upper;  // the same as lower outside the set-points
  double weight = 0;   // 0 at lower … 1 at upper

  const Point& nearest() const { return weight <= 0.5 ? lower : upper; }
  double between(double atLower, double atUpper) const { return atLower + weight * (atUpper - atLower); }
};

// REQUIRES: points not empty, rising by target.
template <typename Point>
SetPointBracket<Point> bracket(const std::vector<Point>& points, StatedTorque setting) {
  const auto reaches = [&](const Point& point) { return point.target.in(setting.unit) >= setting.value; };
  const auto upper = std::find_if(points.begin(), points.end(), reaches);
  if (upper == points.end()) return {.lower = points.back(), .upper = points.back()};
  if (upper == points.begin()) return {.lower = *upper, .upper = *upper};
  const Point& lower = *(upper - 1);
  const double from = lower.target.in(setting.unit);
  return {
      .lower = lower, .upper = *upper, .weight = (setting.value - from) / (upper->target.in(setting.unit) - from)};
}

// Degrees of freedom between two set-points: the fewer; absent means infinite.
inline std::optional<double> fewer(std::optional<double> a, std::optional<double> b) {
  if (!a || !b) return a ? a : b;
  return std::min(*a, *b);
}

}  // namespace steadyturn
