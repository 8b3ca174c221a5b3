#include "delivery.h"

#include <cmath>
#include <numbers>

#include "pull_deviation.h"
#include "student_t.h"

namespace steadyturn {

namespace {

constexpr double intervalConfidence = 0.95;

class Findings {
 public:
  void require(bool good, std::string field, double found, std::string accepted) {
    if (good) return;
    problems_.push_back({.field = std::move(field), .found = writeNumber(found), .accepted = std::move(accepted)});
  }
  void requirePositive(std::string field, double found) {
    require(std::isfinite(found) && found > 0, std::move(field), found, "a number above 0");
  }
  void requireNotNegative(std::string field, double found) {
    require(std::isfinite(found) && found >= 0, std::move(field), found, "a number, 0 or more");
  }
  void requireDegreesOfFreedom(std::string field, std::optional<double> found) {
    if (found) require(*found > 0, std::move(field), *found, "a number above 0, or left out where infinite");
  }
  Problems take() { return std::move(problems_); }

 private:
  Problems problems_;
};

void examine(Findings& findings, const Window& window) {
  findings.requireNotNegative("window.low", window.low.value);
  findings.requirePositive("window.high", window.high.value);
  findings.require(window.low.in(window.high.unit) < window.high.value, "window.low", window.low.value,
                   "a torque below window.high");
}

void examine(Findings& findings, const Adapter& adapter) {
  findings.requirePositive("adapter.wrench_length_mm", adapter.wrenchLengthMm);
  findings.requireNotNegative("adapter.offset_mm", adapter.offsetMm);
  findings.require(std::isfinite(adapter.angleDeg), "adapter.angle_deg", adapter.angleDeg, "a number");
  findings.require(!(adapterFactor(adapter) <= 0), "adapter.offset_mm", adapter.offsetMm,
                   "an offset that leaves leverage: back towards the grip it must be shorter than the wrench");
}

}  // namespace

double adapterFactor(const Adapter& adapter) {
  const double angle = adapter.angleDeg * std::numbers::pi / 180;
  return (adapter.wrenchLengthMm + adapter.offsetMm * std::cos(angle)) / adapter.wrenchLengthMm;
}

Problems problemsOf(const DeliveryInput& input) {
  Findings findings;
  findings.requirePositive("setting", input.setting.value);
  examine(findings, input.window);
  if (input.partLimit) findings.requirePositive("part_limit", input.partLimit->value);
  if (input.adapter) examine(findings, *input.adapter);
  findings.require(std::isfinite(input.deviationPercent) && input.deviationPercent > -100, "deviation.percent",
                   input.deviationPercent, "a number above -100");
  findings.requireNotNegative("deviation.standard_uncertainty_percent", input.deviation.standardPercent);
  findings.requireDegreesOfFreedom("deviation.degrees_of_freedom", input.deviation.degreesOfFreedom);
  findings.requireNotNegative("pull.standard_deviation_percent", input.pull.standardPercent);
  findings.requireDegreesOfFreedom("pull.degrees_of_freedom", input.pull.degreesOfFreedom);
  if (input.resolution) findings.requirePositive("resolution", input.resolution->value);
  findings.requireNotNegative("reference_standard_uncertainty_percent", input.referenceStandardUncertaintyPercent);
  return findings.take();
}

DeliveryResult deliver(const DeliveryInput& input) {
  const PullDeviation deviation = pullDeviation(input);
  const Landing landing = landingOf(input, deviation);
  const double undeviated = input.setting.value * (input.adapter ? adapterFactor(*input.adapter) : 1.0);
  const auto delivered = [&](double percent) {
    return StatedTorque{.value = undeviated / (1 + percent / 100), .unit = input.setting.unit};
  };
  const double reach =
      deviation.scale == 0 ? 0 : deviation.scale * studentQuantile(intervalConfidence, deviation.degreesOfFreedom);

  DeliveryResult result{.expected = delivered(deviation.location),
                        .interval = {.low = delivered(deviation.location + reach), .high = {}},
                        .probabilityWithin = landing.within,
                        .probabilityBelow = landing.below,
                        .probabilityAbove = landing.above,
                        .probabilityOverPartLimit = landing.overPartLimit,
                        .effectiveDegreesOfFreedom = deviation.degreesOfFreedom};
  if (deviation.location - reach > -100) result.interval.high = delivered(deviation.location - reach);
  return result;
}

}  // namespace steadyturn
