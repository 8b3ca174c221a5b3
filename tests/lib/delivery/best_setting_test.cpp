#include "best_setting.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "delivery_example.h"

namespace steadyturn {
namespace {

using testing::deliveryExample;
using testing::newtonMetres;

DeliveryInput moved(DeliveryInput input, double setting) {
  input.setting.value = setting;
  return input;
}

double outside(const DeliveryResult& result) { return result.probabilityBelow + result.probabilityAbove; }

// Every graduation up to `last`, tried one by one.
std::optional<double> smallestOutside(const DeliveryInput& input, double step, int last, double risk) {
  std::optional<double> best;
  for (int k = 1; k <= last; ++k) {
    const DeliveryResult result = deliver(moved(input, k * step));
    if (result.probabilityOverPartLimit.value_or(0) > risk) continue;
    if (!best || outside(result) < *best) best = outside(result);
  }
  return best;
}

TEST(BestSetting, TheContractsExample) {
  const DeliveryInput input = deliveryExample();
  const auto best = findBestSetting(input);
  ASSERT_TRUE(best);
  EXPECT_EQ(std::fmod(best->setting.value, 0.5), 0);
  EXPECT_NEAR(outside(best->result), smallestOutside(input, 0.5, 100, 0.001).value(), 1e-15);
  EXPECT_LE(best->result.probabilityOverPartLimit.value(), 0.001);
  // 16 × 1.125 / 1.012 = 17.79 and 16.5 × 1.125 / 1.012 = 18.34 lie around the middle, 18.
  EXPECT_TRUE(best->setting.value == 16 || best->setting.value == 16.5);
}

// Both edges are equally far, in deviation, where s/2 · (1/16 + 1/20) − 1 is the deviation: s = 17.9 for 0.69 %.
TEST(BestSetting, IsACleanDecimal) {
  DeliveryInput input = deliveryExample();
  input.adapter.reset();
  input.deviationPercent = 0.69;
  input.resolution = newtonMetres(0.1);
  input.partLimit.reset();
  EXPECT_EQ(findBestSetting(input)->setting.value, 17.9);
}

TEST(BestSetting, NothingWithoutAGraduation) {
  DeliveryInput input = deliveryExample();
  input.resolution.reset();
  EXPECT_FALSE(findBestSetting(input));
}

TEST(BestSetting, AFragilePartPullsTheSettingDown) {
  DeliveryInput input = deliveryExample();
  input.adapter.reset();
  const double free = findBestSetting(input)->setting.value;
  input.partLimit = newtonMetres(18.5);
  const auto careful = findBestSetting(input);
  ASSERT_TRUE(careful);
  EXPECT_LT(careful->setting.value, free);
  EXPECT_LE(careful->result.probabilityOverPartLimit.value(), 0.001);
  EXPECT_GT(deliver(moved(input, careful->setting.value + 0.5)).probabilityOverPartLimit.value(), 0.001);
}

TEST(BestSetting, NothingWhenEveryGraduationEndangersThePart) {
  DeliveryInput input = deliveryExample();
  input.resolution = newtonMetres(5);
  input.partLimit = newtonMetres(2);
  EXPECT_FALSE(findBestSetting(input));
}

TEST(BestSetting, WithNothingUncertainTheMiddleWins) {
  const DeliveryInput input{.setting = newtonMetres(1),
                            .window = {.low = newtonMetres(16), .high = newtonMetres(20)}};
  const auto at = [&](StatedTorque setting) { return moved(input, setting.value); };
  EXPECT_EQ(findBestSetting(at, newtonMetres(0.5), {})->setting.value, 18);
  EXPECT_EQ(
      findBestSetting(at, newtonMetres(0.5), {.low = newtonMetres(19), .high = newtonMetres(40)})->setting.value, 19);
  EXPECT_EQ(findBestSetting(at, newtonMetres(0.5), {.low = {}, .high = newtonMetres(10)})->setting.value, 10);
  EXPECT_EQ(
      findBestSetting(at, newtonMetres(0.5), {.low = newtonMetres(60), .high = newtonMetres(90)})->setting.value, 60);
  EXPECT_FALSE(findBestSetting(at, newtonMetres(0.5), {.low = newtonMetres(60), .high = newtonMetres(50)}));
}

// A limit so far below the window that hitting it is a matter of 1 in 10^11: still the highest safe graduation is
// best.
TEST(BestSetting, IsFoundWhereTheWindowIsHopeless) {
  DeliveryInput input = deliveryExample();
  input.window = {.low = newtonMetres(5.27), .high = newtonMetres(5.37)};
  input.partLimit = newtonMetres(4.6);
  input.deviationPercent = -4.61;
  input.deviation = {.standardPercent = 1.38, .degreesOfFreedom = 22};
  input.pull.standardPercent = 1.07;
  input.resolution = newtonMetres(0.0005);
  const auto best = findBestSetting(input);
  ASSERT_TRUE(best);
  EXPECT_LE(best->result.probabilityOverPartLimit.value(), 0.001);
  EXPECT_GT(deliver(moved(input, best->setting.value + 0.0005)).probabilityOverPartLimit.value(), 0.001);
}

struct Case {
  DeliveryInput input;
  double step;
};

// What rapidcheck prints of a case that fails.
void showValue(const Case& shown, std::ostream& out) {
  const DeliveryInput& input = shown.input;
  out << "window " << input.window.low.value << " to " << input.window.high.value << ", part limit "
      << input.partLimit.value_or(newtonMetres(0)).value << ", adapter factor " << adapterFactor(*input.adapter)
      << ", deviation " << input.deviationPercent << " ± " << input.deviation.standardPercent << " (df "
      << *input.deviation.degreesOfFreedom << "), pull " << input.pull.standardPercent << ", step " << shown.step;
}

rc::Gen<Case> anyCase() {
  return rc::gen::exec([] {
    DeliveryInput input = deliveryExample();
    const auto between = [](int low, int high) { return *rc::gen::inRange(low, high) / 100.0; };
    const double step = *rc::gen::element(0.05, 0.1, 0.25, 0.5, 1.0, 2.0);
    input.window.low.value = between(500, 2500);
    input.window.high.value = input.window.low.value + between(10, 800);
    if (*rc::gen::arbitrary<bool>()) {
      input.partLimit = newtonMetres(input.window.low.value + between(-200, 1200));
    } else {
      input.partLimit.reset();
    }
    input.adapter->angleDeg = *rc::gen::inRange(0, 180);
    input.deviationPercent = between(-800, 800);
    input.deviation = {.standardPercent = between(1, 500), .degreesOfFreedom = *rc::gen::inRange(1, 40)};
    input.pull.standardPercent = between(0, 200);
    input.resolution = newtonMetres(step);
    return Case{input, step};
  });
}

RC_GTEST_PROP(BestSettingProperty, EqualsTryingEveryGraduation, ()) {
  const auto [input, step] = *anyCase();
  const auto tried = smallestOutside(input, step, static_cast<int>(70 / step), defaultPartLimitRisk);
  const auto best = findBestSetting(input);
  RC_ASSERT(best.has_value() == tried.has_value());
  if (!best) return;
  RC_ASSERT(best->result.probabilityOverPartLimit.value_or(0) <= defaultPartLimitRisk);
  RC_ASSERT(std::abs(outside(best->result) - *tried) <= 1e-12);
}

RC_GTEST_PROP(BestSettingProperty, IsNoWorseThanItsNeighbours, ()) {
  const auto [input, step] = *anyCase();
  const auto best = findBestSetting(input);
  RC_PRE(best.has_value());
  for (const double neighbour : {best->setting.value - step, best->setting.value + step}) {
    if (neighbour < step / 2) continue;
    const DeliveryResult result = deliver(moved(input, neighbour));
    RC_ASSERT(result.probabilityOverPartLimit.value_or(0) > defaultPartLimitRisk ||
              result.probabilityWithin <= best->result.probabilityWithin + 1e-14);
  }
}

// Scales too fine to try one by one are halved: that must find what a coarse comb of tries can't beat.
RC_GTEST_PROP(BestSettingProperty, AFineScaleIsNoWorseThanACoarseOne, ()) {
  Case any = *anyCase();
  DeliveryInput& input = any.input;
  input.resolution = newtonMetres(0.0005);
  const auto best = findBestSetting(input);
  RC_PRE(best.has_value());
  RC_ASSERT(best->result.probabilityOverPartLimit.value_or(0) <= defaultPartLimitRisk);
  for (int i = 1; i <= 700; ++i) {
    const DeliveryResult result = deliver(moved(input, 0.05 * i));
    if (result.probabilityOverPartLimit.value_or(0) > defaultPartLimitRisk) continue;
    RC_LOG() << "found " << best->setting.value << ", better " << 0.05 * i << " by "
             << outside(best->result) - outside(result) << '\n';
    RC_ASSERT(outside(result) >= outside(best->result) - 1e-12);
  }
}

}  // namespace
}  // namespace steadyturn
