// JCGM 101:2008: propagate the distributions themselves, with a million draws. Seeded, so that it is the same every
// time.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "delivery_example.h"

namespace steadyturn {
namespace {

using testing::deliveryExample;

constexpr int draws = 1'000'000;

struct Shares {
  double below = 0, above = 0, overPartLimit = 0;
};

template <typename Deviation>
Shares propagate(const DeliveryInput& input, Deviation&& drawDeviation) {
  Shares shares;
  for (int i = 0; i < draws; ++i) {
    const double ratio = 1 + drawDeviation() / 100;
    const double torque = ratio > 0 ? input.setting.value * adapterFactor(*input.adapter) / ratio : INFINITY;
    shares.below += torque < input.window.low.value;
    shares.above += torque > input.window.high.value;
    shares.overPartLimit += torque > input.partLimit->value;
  }
  return {shares.below / draws, shares.above / draws, shares.overPartLimit / draws};
}

double fourStandardErrors(double probability) { return 4 * std::sqrt(probability * (1 - probability) / draws); }

// A setting where both tails count for something.
DeliveryInput nearTheEdge(double setting) {
  DeliveryInput input = deliveryExample();
  input.setting.value = setting;
  input.window.low.value = 19.2;
  input.window.high.value = 20.4;
  input.partLimit->value = 20.6;
  return input;
}

// The model as stated: one Student t with the effective degrees of freedom.
TEST(MonteCarlo, TheStatedDistributionPropagatesToTheStatedProbabilities) {
  std::mt19937_64 random(20260314);
  for (const double setting : {17.5, 18.0}) {
    const DeliveryInput input = nearTheEdge(setting);
    const DeliveryResult result = deliver(input);
    const double resolution = 0.5 / setting * 100 / std::sqrt(12);
    const double u = std::sqrt(0.64 + 0.25 + 0.0625 + resolution * resolution);
    std::student_t_distribution<double> student(result.effectiveDegreesOfFreedom.value());
    const Shares shares = propagate(input, [&] { return 1.2 + u * student(random); });
    EXPECT_NEAR(result.probabilityBelow, shares.below, fourStandardErrors(shares.below));
    EXPECT_NEAR(result.probabilityAbove, shares.above, fourStandardErrors(shares.above));
    EXPECT_NEAR(*result.probabilityOverPartLimit, shares.overPartLimit, fourStandardErrors(shares.overPartLimit));
  }
}

// Each contribution drawn from its own distribution, all known well. The graduation's rectangle counts as part of one
// normal: by the Edgeworth term of its flatness that shifts a tail by at most half a hundredth here.
TEST(MonteCarlo, EachContributionFromItsOwnDistribution) {
  std::mt19937_64 random(20260601);
  for (const double setting : {17.5, 18.0}) {
    DeliveryInput input = nearTheEdge(setting);
    input.deviation.degreesOfFreedom.reset();
    input.pull.degreesOfFreedom.reset();
    const DeliveryResult result = deliver(input);
    std::normal_distribution<double> normal;
    const double half = 0.5 / setting * 100 / 2;
    std::uniform_real_distribution<double> graduation(-half, half);
    const Shares shares = propagate(input, [&] {
      return 1.2 + 0.8 * normal(random) + 0.5 * normal(random) + 0.25 * normal(random) + graduation(random);
    });
    EXPECT_NEAR(result.probabilityBelow, shares.below, 0.005);
    EXPECT_NEAR(result.probabilityAbove, shares.above, 0.005);
    EXPECT_NEAR(*result.probabilityOverPartLimit, shares.overPartLimit, 0.005);
  }
}

// What Welch–Satterthwaite promises: with standard deviations that were themselves estimated from 7 and 15
// observations, the 95 % interval holds what is delivered in about 95 of 100 cases. Taken for a normal it would not.
TEST(MonteCarlo, TheIntervalHoldsWhatItPromisesWhenScatterIsOnlyEstimated) {
  std::mt19937_64 random(20261225);
  std::normal_distribution<double> normal;
  std::chi_squared_distribution<double> six(6);
  std::chi_squared_distribution<double> fourteen(14);
  constexpr int cases = 100'000;
  int held = 0;
  int heldAsNormal = 0;
  for (int i = 0; i < cases; ++i) {
    DeliveryInput input = deliveryExample();
    input.resolution.reset();
    input.deviation.standardPercent = 0.8 * std::sqrt(six(random) / 6);
    input.pull.standardPercent = 0.5 * std::sqrt(fourteen(random) / 14);
    const double deviation = 1.2 + 0.8 * normal(random) + 0.5 * normal(random) + 0.25 * normal(random);
    const double torque = input.setting.value * adapterFactor(*input.adapter) / (1 + deviation / 100);
    const auto holds = [&](const DeliveryResult& result) {
      return result.interval.low.value <= torque && torque <= result.interval.high.value().value;
    };
    held += holds(deliver(input));
    input.deviation.degreesOfFreedom.reset();
    input.pull.degreesOfFreedom.reset();
    heldAsNormal += holds(deliver(input));
  }
  EXPECT_NEAR(static_cast<double>(held) / cases, 0.95, 0.005);
  EXPECT_LT(static_cast<double>(heldAsNormal) / cases, 0.94);
}

}  // namespace
}  // namespace steadyturn
