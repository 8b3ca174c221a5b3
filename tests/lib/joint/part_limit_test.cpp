#include "part_limit.h"

#include <gmock/gmock.h>

namespace steadyturn {
namespace {

using ::testing::HasSubstr;

// Common practice: stripping at least twice the driving torque, tightening to at most 70 % of stripping.
TEST(PartLimit, IsSeventyPercentOfTheStrippingTorque) {
  const auto measured = proposePartLimit(TrialKind::Stripping, {10, Unit::NewtonMetre}, {5, Unit::NewtonMetre});
  ASSERT_TRUE(measured);
  EXPECT_DOUBLE_EQ(measured->limit.value, 7);
  EXPECT_THAT(measured->basis, HasSubstr("proposal"));
  const auto driven = proposePartLimit(TrialKind::Driving, {1, Unit::NewtonMetre}, {1.2, Unit::NewtonMetre});
  ASSERT_TRUE(driven);
  EXPECT_DOUBLE_EQ(driven->limit.value, 1.4);
  EXPECT_THAT(driven->basis, HasSubstr("driving torque 1 N·m"));
}

TEST(PartLimit, IsStatedInTheTargetsUnit) {
  const auto proposal = proposePartLimit(TrialKind::Stripping, {2, Unit::NewtonMetre}, {90, Unit::CentinewtonMetre});
  ASSERT_TRUE(proposal);
  EXPECT_EQ(proposal->limit.unit, Unit::CentinewtonMetre);
  EXPECT_NEAR(proposal->limit.value, 140, 1e-9);
}

TEST(PartLimit, NeverPassesATargetThatIsTooHigh) {
  EXPECT_FALSE(proposePartLimit(TrialKind::Stripping, {6, Unit::NewtonMetre}, {5, Unit::NewtonMetre}));
  EXPECT_FALSE(proposePartLimit(TrialKind::Driving, {0, Unit::NewtonMetre}, {5, Unit::NewtonMetre}));
}

}  // namespace
}  // namespace steadyturn
