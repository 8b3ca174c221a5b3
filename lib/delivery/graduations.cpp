#include "graduations.h"

#include <algorithm>
#include <cmath>

namespace steadyturn {

namespace {

constexpr int cleanDigits = 12;
constexpr int largestExactPower = 22;  // 10^22 is the last power of ten that a double holds exactly
// Finer steps would no longer be told apart after rounding to the clean digits.
constexpr double mostGraduations = 1e12;
// 7.3 / 0.1 is 72.99999999999999: a limit that lies on a graduation must find it.
constexpr double slack = 1e-9;

}  // namespace

StatedTorque cleanDecimal(StatedTorque torque) {
  if (torque.value == 0 || !std::isfinite(torque.value)) return torque;
  const int decimals = cleanDigits - 1 - static_cast<int>(std::floor(std::log10(std::abs(torque.value))));
  if (std::abs(decimals) > largestExactPower) return torque;
  // Dividing a whole number by an exact power of ten gives the double nearest to the decimal.
  const double power = std::pow(10.0, std::abs(decimals));
  const double scaled =
      decimals >= 0 ? std::round(torque.value * power) / power : std::round(torque.value / power) * power;
  return {.value = scaled, .unit = torque.unit};
}

Graduations::Graduations(StatedTorque resolution, const SettingRange& range) : resolution_(resolution) {
  const auto inGraduations = [&](StatedTorque torque) {
    return std::clamp(torque.in(resolution.unit) / resolution.value, 0.0, mostGraduations);
  };
  if (range.low) first_ = std::max<std::int64_t>(1, std::llround(std::ceil(inGraduations(*range.low) - slack)));
  last_ = std::llround(range.high ? std::floor(inGraduations(*range.high) + slack) : mostGraduations);
}

StatedTorque Graduations::at(std::int64_t k) const {
  return cleanDecimal({.value = static_cast<double>(k) * resolution_.value, .unit = resolution_.unit});
}

std::int64_t Graduations::firstWhere(const std::function<bool(StatedTorque)>& reached) const {
  std::int64_t low = first_;
  std::int64_t beyond = last_ + 1;
  while (low < beyond) {
    const std::int64_t middle = low + (beyond - low) / 2;
    if (reached(at(middle))) {
      beyond = middle;
    } else {
      low = middle + 1;
    }
  }
  return low;
}

}  // namespace steadyturn
