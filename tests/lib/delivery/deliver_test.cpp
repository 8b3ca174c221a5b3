#include <gsl/gsl_cdf.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "delivery_example.h"

namespace steadyturn {
namespace {

using testing::deliveryExample;
using testing::newtonMetres;

// The contract's example, worked with GSL's distributions and the formulas written out: u² = 0.8² + 0.5² + 0.25² +
// (0.5/18·100/√12)², Welch–Satterthwaite over deviation and pull (JCGM 100:2008, G.4.1).
TEST(Deliver, TheContractsExample) {
  const double resolution = 0.5 / 18 * 100 / std::sqrt(12);
  const double u = std::sqrt(0.64 + 0.25 + 0.0625 + resolution * resolution);
  const double df = std::pow(u, 4) / (std::pow(0.8, 4) / 6 + std::pow(0.5, 4) / 14);
  const double atFastener = 18 * 450.0 / 400;
  const auto thresholdFor = [&](double torque) { return ((atFastener / torque - 1) * 100 - 1.2) / u; };

  const DeliveryResult result = deliver(deliveryExample());
  EXPECT_NEAR(result.effectiveDegreesOfFreedom.value(), df, 1e-9);
  EXPECT_NEAR(result.expected.value, atFastener / 1.012, 1e-12);
  EXPECT_NEAR(result.probabilityBelow, gsl_cdf_tdist_Q(thresholdFor(16), df), 1e-10);
  EXPECT_NEAR(result.probabilityAbove, gsl_cdf_tdist_P(thresholdFor(20), df), 1e-10);
  EXPECT_NEAR(result.probabilityOverPartLimit.value(), gsl_cdf_tdist_P(thresholdFor(21), df), 1e-10);
  const double t = gsl_cdf_tdist_Pinv(0.975, df);
  EXPECT_NEAR(result.interval.low.value, atFastener / (1 + (1.2 + t * u) / 100), 1e-7);
  EXPECT_NEAR(result.interval.high.value().value, atFastener / (1 + (1.2 - t * u) / 100), 1e-7);
}

TEST(Deliver, WithoutDegreesOfFreedomItIsNormal) {
  DeliveryInput input = deliveryExample();
  input.deviation.degreesOfFreedom.reset();
  input.pull.degreesOfFreedom.reset();
  input.adapter.reset();
  const DeliveryResult result = deliver(input);
  EXPECT_FALSE(result.effectiveDegreesOfFreedom);
  const double u = std::sqrt(0.64 + 0.25 + 0.0625 + std::pow(0.5 / 18 * 100, 2) / 12);
  EXPECT_NEAR(result.probabilityAbove, gsl_cdf_gaussian_P((18.0 / 20 - 1) * 100 - 1.2, u), 1e-15);
  EXPECT_NEAR(result.probabilityBelow / gsl_cdf_gaussian_Q((18.0 / 16 - 1) * 100 - 1.2, u), 1, 1e-9);
}

// Welch–Satterthwaite by hand: two equal terms with ν each make 2ν; an infinite one beside an equal finite one 4ν.
TEST(Deliver, EffectiveDegreesOfFreedomByHand) {
  DeliveryInput input = deliveryExample();
  input.resolution.reset();
  input.referenceStandardUncertaintyPercent = 0;
  input.deviation = {.standardPercent = 0.6, .degreesOfFreedom = 5};
  input.pull = {.standardPercent = 0.6, .degreesOfFreedom = 5};
  EXPECT_NEAR(deliver(input).effectiveDegreesOfFreedom.value(), 10, 1e-12);
  input.pull.degreesOfFreedom.reset();
  EXPECT_NEAR(deliver(input).effectiveDegreesOfFreedom.value(), 20, 1e-12);
  input.deviation = {};
  input.pull = {.standardPercent = 1e-100, .degreesOfFreedom = 4};
  EXPECT_NEAR(deliver(input).effectiveDegreesOfFreedom.value(), 4, 1e-12);
}

TEST(Deliver, WithNothingUncertainItIsYesOrNo) {
  DeliveryInput input{.setting = newtonMetres(20), .window = {.low = newtonMetres(16), .high = newtonMetres(20)}};
  DeliveryResult result = deliver(input);
  EXPECT_EQ(result.probabilityWithin, 1);  // the window's edge belongs to it
  EXPECT_EQ(result.interval.low, result.expected);
  EXPECT_EQ(result.interval.high, result.expected);
  input.deviationPercent = -1;
  result = deliver(input);
  EXPECT_EQ(result.probabilityAbove, 1);
  EXPECT_EQ(result.probabilityWithin, 0);
  input.deviationPercent = 30;
  EXPECT_EQ(deliver(input).probabilityBelow, 1);
}

// What reads too much delivers too little (ISO 6789: a = (Xa − Xr)/Xr).
TEST(Deliver, APositiveDeviationDeliversLess) {
  DeliveryInput input{.setting = newtonMetres(101), .window = {.low = newtonMetres(90), .high = newtonMetres(110)}};
  input.deviationPercent = 1;
  EXPECT_NEAR(deliver(input).expected.value, 100, 1e-12);
}

TEST(Deliver, LimitsMayBeStatedInOtherUnits) {
  DeliveryInput input = deliveryExample();
  const DeliveryResult metric = deliver(input);
  input.partLimit = convert(*input.partLimit, Unit::PoundForceInch);
  input.window.low = convert(input.window.low, Unit::KilogramForceCentimetre);
  input.resolution = convert(*input.resolution, Unit::PoundForceFoot);
  const DeliveryResult mixed = deliver(input);
  EXPECT_NEAR(mixed.probabilityOverPartLimit.value(), metric.probabilityOverPartLimit.value(), 1e-12);
  EXPECT_NEAR(mixed.probabilityBelow / metric.probabilityBelow, 1, 1e-9);
  EXPECT_EQ(mixed.expected.unit, Unit::NewtonMetre);
}

TEST(Deliver, FarTailsAreFiguresAndNotRounding) {
  DeliveryInput input = deliveryExample();
  input.adapter.reset();
  input.deviation.degreesOfFreedom.reset();
  input.pull.degreesOfFreedom.reset();
  input.partLimit = newtonMetres(25);
  const double u = std::sqrt(0.64 + 0.25 + 0.0625 + std::pow(0.5 / 18 * 100, 2) / 12);
  const double expected = gsl_cdf_gaussian_P((18.0 / 25 - 1) * 100 - 1.2, u);
  ASSERT_LT(expected, 1e-60);
  EXPECT_NEAR(deliver(input).probabilityOverPartLimit.value() / expected, 1, 1e-9);
}

TEST(Deliver, HittingTheWindowFromFarAwayIsAFigureToo) {
  DeliveryInput input = deliveryExample();
  input.adapter.reset();
  input.deviation.degreesOfFreedom.reset();
  input.pull.degreesOfFreedom.reset();
  for (const double setting : {14.0, 23.0}) {
    input.setting = newtonMetres(setting);
    const double u = std::sqrt(0.64 + 0.25 + 0.0625 + std::pow(0.5 / setting * 100, 2) / 12);
    const auto z = [&](double torque) { return ((setting / torque - 1) * 100 - 1.2) / u; };
    const double expected = setting < 16 ? gsl_cdf_ugaussian_P(z(16)) - gsl_cdf_ugaussian_P(z(20))
                                         : gsl_cdf_ugaussian_Q(z(20)) - gsl_cdf_ugaussian_Q(z(16));
    ASSERT_LT(expected, 1e-12);
    EXPECT_NEAR(deliver(input).probabilityWithin / expected, 1, 1e-9) << setting;
  }
}

TEST(Deliver, AnIntervalThatReachesMinusAHundredHasNoUpperEnd) {
  DeliveryInput input = deliveryExample();
  input.deviation = {.standardPercent = 60, .degreesOfFreedom = 2};
  const DeliveryResult result = deliver(input);
  EXPECT_FALSE(result.interval.high);
  EXPECT_GT(result.interval.low.value, 0);
  EXPECT_NEAR(result.probabilityBelow + result.probabilityWithin + result.probabilityAbove, 1, 1e-12);
}

TEST(Deliver, AWindowFromZeroHasNothingBelowIt) {
  DeliveryInput input = deliveryExample();
  input.window.low = newtonMetres(0);
  EXPECT_EQ(deliver(input).probabilityBelow, 0);
}

rc::Gen<DeliveryInput> anyDelivery() {
  return rc::gen::exec([] {
    DeliveryInput input = deliveryExample();
    const auto between = [](int low, int high) { return *rc::gen::inRange(low, high) / 100.0; };
    input.setting.value = between(100, 4000);
    input.window.low.value = between(0, 1900);
    input.window.high.value = input.window.low.value + between(1, 900);
    input.partLimit->value = between(1000, 3000);
    input.deviationPercent = between(-900, 900);
    input.deviation = {.standardPercent = between(0, 300), .degreesOfFreedom = between(50, 3000)};
    input.pull.standardPercent = between(0, 200);
    return input;
  });
}

RC_GTEST_PROP(DeliverProperty, ProbabilitiesSumToOne, ()) {
  const DeliveryInput input = *anyDelivery();
  const DeliveryResult result = deliver(input);
  RC_ASSERT(problemsOf(input).empty());
  RC_ASSERT(result.probabilityWithin >= 0 && result.probabilityBelow >= 0 && result.probabilityAbove >= 0);
  RC_ASSERT(std::abs(result.probabilityWithin + result.probabilityBelow + result.probabilityAbove - 1) < 1e-12);
}

RC_GTEST_PROP(DeliverProperty, MoreTorqueSetIsMoreTorqueOver, ()) {
  DeliveryInput input = *anyDelivery();
  input.resolution.reset();  // its share of the uncertainty would change with the setting
  const DeliveryResult less = deliver(input);
  input.setting.value *= 1.05;
  const DeliveryResult more = deliver(input);
  RC_ASSERT(more.probabilityAbove >= less.probabilityAbove);
  RC_ASSERT(more.probabilityBelow <= less.probabilityBelow);
  RC_ASSERT(*more.probabilityOverPartLimit >= *less.probabilityOverPartLimit);
}

}  // namespace
}  // namespace steadyturn
