#include "pull_deviation.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "student_t.h"

namespace steadyturn {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

// A rectangle of full width `resolution`, relative to the setting (JCGM 100:2008, 4.3.7).
double resolutionPercent(const DeliveryInput& input) {
  if (!input.resolution) return 0;
  return input.resolution->in(input.setting.unit) / input.setting.value * 100 / (2 * std::numbers::sqrt3);
}

// One term of the Welch–Satterthwaite sum, as a share of the whole so that no fourth power underflows.
double satterthwaiteTerm(const Uncertainty& uncertainty, double scale) {
  if (!uncertainty.degreesOfFreedom || !(*uncertainty.degreesOfFreedom > 0)) return 0;
  return std::pow(uncertainty.standardPercent / scale, 4) / *uncertainty.degreesOfFreedom;
}

double torqueAtFastener(const DeliveryInput& input, Unit unit) {
  return input.setting.in(unit) * (input.adapter ? adapterFactor(*input.adapter) : 1.0);
}

// The deviation, %, at which exactly `torque` reaches the fastener; less deviation delivers more.
double deviationDelivering(const DeliveryInput& input, StatedTorque torque) {
  if (torque.value == 0) return infinity;
  return (torqueAtFastener(input, torque.unit) / torque.value - 1) * 100;
}

double probabilityLess(const PullDeviation& a, double threshold) {
  if (a.scale == 0) return a.location < threshold ? 1 : 0;
  return studentLower((threshold - a.location) / a.scale, a.degreesOfFreedom);
}

double probabilityMore(const PullDeviation& a, double threshold) {
  if (a.scale == 0) return a.location > threshold ? 1 : 0;
  return studentUpper((threshold - a.location) / a.scale, a.degreesOfFreedom);
}

}  // namespace

PullDeviation pullDeviation(const DeliveryInput& input) {
  const double scale = std::hypot(std::hypot(input.deviation.standardPercent, input.pull.standardPercent),
                                  input.referenceStandardUncertaintyPercent, resolutionPercent(input));
  PullDeviation result{.location = input.deviationPercent, .scale = scale, .degreesOfFreedom = {}};
  if (scale == 0) return result;
  const double sum = satterthwaiteTerm(input.deviation, scale) + satterthwaiteTerm(input.pull, scale);
  if (sum > 0) result.degreesOfFreedom = 1 / sum;
  return result;
}

double expectedNewtonMetres(const DeliveryInput& input) {
  if (!(input.deviationPercent > -100)) return infinity;
  return torqueAtFastener(input, Unit::NewtonMetre) / (1 + input.deviationPercent / 100);
}

Landing landingOf(const DeliveryInput& input, const PullDeviation& deviation) {
  // A deviation of −100 % or less lies below every threshold here, so it counts as too much torque.
  const double atLow = deviationDelivering(input, input.window.low);
  const double atHigh = deviationDelivering(input, input.window.high);
  Landing landing{.below = probabilityMore(deviation, atLow),
                  .within = 0,
                  .above = probabilityLess(deviation, atHigh),
                  .overPartLimit = {}};
  if (deviation.location < atHigh) {
    landing.within = probabilityMore(deviation, atHigh) - landing.below;
  } else if (deviation.location > atLow) {
    landing.within = probabilityLess(deviation, atLow) - landing.above;
  } else {
    landing.within = 1 - landing.below - landing.above;
  }
  landing.within = std::max(0.0, landing.within);
  if (input.partLimit) {
    landing.overPartLimit = probabilityLess(deviation, deviationDelivering(input, *input.partLimit));
  }
  return landing;
}

}  // namespace steadyturn
