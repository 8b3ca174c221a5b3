#include <gtest/gtest.h>

#include <limits>
#include <string>
#include <vector>

#include "delivery_example.h"

namespace steadyturn {
namespace {

using testing::deliveryExample;
using testing::newtonMetres;
using Fields = std::vector<std::string>;

Fields fieldsOf(const DeliveryInput& input) {
  Fields fields;
  for (const Problem& problem : problemsOf(input)) fields.push_back(problem.field);
  return fields;
}

TEST(DeliveryProblems, TheContractsExampleHasNone) { EXPECT_EQ(fieldsOf(deliveryExample()), Fields{}); }

TEST(DeliveryProblems, AllAreNamedAtOnce) {
  constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  DeliveryInput input = deliveryExample();
  input.setting.value = 0;
  input.window = {.low = newtonMetres(20), .high = newtonMetres(16)};
  input.partLimit = newtonMetres(0);
  input.adapter->wrenchLengthMm = nan;
  input.deviationPercent = -100;
  input.deviation = {.standardPercent = -1, .degreesOfFreedom = 0};
  input.pull = {.standardPercent = nan, .degreesOfFreedom = nan};
  input.resolution = newtonMetres(-0.5);
  input.referenceStandardUncertaintyPercent = std::numeric_limits<double>::infinity();
  EXPECT_EQ(fieldsOf(input),
            (Fields{"setting", "window.low", "part_limit", "adapter.wrench_length_mm", "deviation.percent",
                    "deviation.standard_uncertainty_percent", "deviation.degrees_of_freedom",
                    "pull.standard_deviation_percent", "pull.degrees_of_freedom", "resolution",
                    "reference_standard_uncertainty_percent"}));
}

TEST(DeliveryProblems, WindowsAreComparedAcrossUnits) {
  DeliveryInput input = deliveryExample();
  input.window = {.low = {.value = 16, .unit = Unit::PoundForceFoot},
                  .high = newtonMetres(20)};  // 16 lbf·ft = 21.7 N·m
  EXPECT_EQ(fieldsOf(input), Fields{"window.low"});
}

TEST(DeliveryProblems, AnAdapterBackPastTheHandHasNoLeverage) {
  DeliveryInput input = deliveryExample();
  input.adapter = Adapter{.wrenchLengthMm = 400, .offsetMm = 400, .angleDeg = 180};
  EXPECT_EQ(fieldsOf(input), Fields{"adapter.offset_mm"});
  input.adapter->offsetMm = 399;
  EXPECT_EQ(fieldsOf(input), Fields{});
  input.adapter->offsetMm = -1;
  EXPECT_EQ(fieldsOf(input), Fields{"adapter.offset_mm"});
}

}  // namespace
}  // namespace steadyturn
