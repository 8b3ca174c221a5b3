// JCGM 101:2008: propagate the distributions themselves, with ten million draws. Seeded, so that it is the same every
// time.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <random>

#include "delivery_example.h"

namespace steadyturn {
namespace {

using testing::deliveryExample;

constexpr int draws = 10'000'000;

struct Shares {
  double below = 0, above = 0, overPartLimit = 0;
};

// One case: an input, with what the tally needs of it worked out once.
class Case {
 public:
  explicit Case(DeliveryInput input)
      : input_(std::move(input)), shown_(input_.setting.value * adapterFactor(*input_.adapter)) {}
  const DeliveryInput& input() const { return input_; }
  DeliveryInput& input() { return input_; }
  double halfGraduation() const { return 0.5 / input_.setting.value * 100 / 2; }  // %
  void land(double deviation) {
    const double ratio = 1 + deviation / 100;
    const double torque = ratio > 0 ? shown_ / ratio : INFINITY;
    below_ += torque < input_.window.low.value;
    above_ += torque > input_.window.high.value;
    over_ += torque > input_.partLimit->value;
  }
  Shares shares() const { return {share(below_), share(above_), share(over_)}; }

 private:
  static double share(int count) { return static_cast<double>(count) / draws; }
  DeliveryInput input_;
  double shown_;
  int below_ = 0, above_ = 0, over_ = 0;
};

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
    Case one(nearTheEdge(setting));
    const DeliveryResult result = deliver(one.input());
    const double resolution = one.halfGraduation() / std::sqrt(3);
    const double u = std::sqrt(0.64 + 0.25 + 0.0625 + resolution * resolution);
    std::student_t_distribution<double> student(result.effectiveDegreesOfFreedom.value());
    for (int i = 0; i < draws; ++i) one.land(1.2 + u * student(random));
    const Shares shares = one.shares();
    EXPECT_NEAR(result.probabilityBelow, shares.below, fourStandardErrors(shares.below));
    EXPECT_NEAR(result.probabilityAbove, shares.above, fourStandardErrors(shares.above));
    EXPECT_NEAR(*result.probabilityOverPartLimit, shares.overPartLimit, fourStandardErrors(shares.overPartLimit));
  }
}

// Each contribution drawn from its own distribution, all known well. The graduation's rectangle counts as part of one
// normal. What that shifts a tail by follows from the Edgeworth series of the rectangle's cumulants (at 17.5 N·m:
// excess kurtosis −0.21, sixth cumulant 0.50 of σ⁶): at most 0.0048 by the first term and 0.0015 by the second.
TEST(MonteCarlo, EachContributionFromItsOwnDistribution) {
  std::mt19937_64 random(20260601);
  std::array cases{Case(nearTheEdge(17.5)), Case(nearTheEdge(18.0))};
  for (Case& one : cases) {
    one.input().deviation.degreesOfFreedom.reset();
    one.input().pull.degreesOfFreedom.reset();
  }
  std::normal_distribution<double> normal;
  std::uniform_real_distribution<double> graduation(-1, 1);
  for (int i = 0; i < draws; ++i) {
    const double smooth = 1.2 + 0.8 * normal(random) + 0.5 * normal(random) + 0.25 * normal(random);
    const double within = graduation(random);
    for (Case& one : cases) one.land(smooth + one.halfGraduation() * within);
  }
  for (const Case& one : cases) {
    const DeliveryResult result = deliver(one.input());
    const Shares shares = one.shares();
    constexpr double shift = 0.0048 + 0.0015;
    EXPECT_NEAR(result.probabilityBelow, shares.below, shift + fourStandardErrors(shares.below));
    EXPECT_NEAR(result.probabilityAbove, shares.above, shift + fourStandardErrors(shares.above));
    EXPECT_NEAR(*result.probabilityOverPartLimit, shares.overPartLimit,
                shift + fourStandardErrors(shares.overPartLimit));
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
