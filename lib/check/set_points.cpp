#include "set_points.h"

#include <algorithm>
#include <cmath>

namespace steadyturn {
namespace {

// 3 × 0.1 is 0.30000000000000004 in binary; a person sets 0.3.
double withoutBinaryNoise(double value) {
  constexpr int digitsThatADoubleKeeps = 15;
  return parseNumber(writeRounded(value, digitsThatADoubleKeeps), "").value_or(value);
}

double onGraduation(double value, std::optional<double> graduation) {
  if (!graduation) return withoutBinaryNoise(value);
  return withoutBinaryNoise(std::max(std::round(value / *graduation), 1.0) * *graduation);
}

}  // namespace

std::vector<StatedTorque> proposeSetPoints(ToolKind kind, std::optional<StatedTorque> minimum, StatedTorque maximum,
                                           std::optional<StatedTorque> resolution) {
  if (rulesFor(kind).fixedValue) return {maximum};

  std::optional<double> graduation;
  if (resolution) graduation = resolution->in(maximum.unit);
  const double lowest = minimum ? withoutBinaryNoise(minimum->in(maximum.unit))  // marked, so on the graduation
                                : onGraduation(0.2 * maximum.value, graduation);
  const double middle = onGraduation(0.6 * maximum.value, graduation);

  std::vector<StatedTorque> points;
  for (double value : {lowest, middle, maximum.value}) {
    const bool rising = points.empty() || value > points.back().value;
    if (rising && value <= maximum.value) points.push_back({.value = value, .unit = maximum.unit});
  }
  return points;
}

}  // namespace steadyturn
