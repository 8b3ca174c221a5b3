#include "torque.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace steadyturn {
namespace {

TEST(Torque, ConvertsWithTheExactFactors) {
  // 20 lbf·ft = 20 × 1.3558179483314004 N·m (NIST SP 811, App. B).
  EXPECT_DOUBLE_EQ(convert({20, Unit::PoundForceFoot}, Unit::NewtonMetre).value, 27.116358966628008);
  EXPECT_DOUBLE_EQ(convert({1, Unit::PoundForceFoot}, Unit::PoundForceInch).value, 12);
  EXPECT_DOUBLE_EQ(convert({1, Unit::PoundForceInch}, Unit::OunceForceInch).value, 16);
  EXPECT_DOUBLE_EQ(convert({1, Unit::KilogramForceMetre}, Unit::KilogramForceCentimetre).value, 100);
  EXPECT_DOUBLE_EQ(Torque::of(250, Unit::CentinewtonMetre).newtonMetres(), 2.5);
  EXPECT_EQ(convert({20, Unit::PoundForceFoot}, Unit::NewtonMetre).unit, Unit::NewtonMetre);
}

TEST(Torque, InItsOwnUnitAValueStaysAsStated) {
  EXPECT_EQ((StatedTorque{20.1, Unit::PoundForceFoot}.in(Unit::PoundForceFoot)), 20.1);
  EXPECT_EQ(convert({0.3, Unit::OunceForceInch}, Unit::OunceForceInch).value, 0.3);
}

TEST(Torque, OrdersByTorqueWhateverTheUnit) {
  EXPECT_LT(Torque::of(13, Unit::PoundForceInch), Torque::of(1.5, Unit::NewtonMetre));
  EXPECT_GT(Torque::of(1, Unit::KilogramForceMetre), Torque::of(9.8, Unit::NewtonMetre));
}

TEST(Torque, IsWrittenForPeopleWithItsSign) {
  EXPECT_EQ(writeTorque({27.116358966628, Unit::NewtonMetre}), "27.12 N·m");
  EXPECT_EQ(writeTorque({20, Unit::PoundForceFoot}), "20 lbf·ft");
  EXPECT_EQ(writeTorque({1.23456, Unit::KilogramForceCentimetre}, 2), "1.2 kgf·cm");
}

RC_GTEST_PROP(Torque, ThereAndBackIsTheSameTorque, ()) {
  const auto unitIndex = rc::gen::inRange<std::size_t>(0, allUnits.size());
  const Unit from = allUnits[*unitIndex];
  const Unit to = allUnits[*unitIndex];
  const double value = *rc::gen::inRange(1, 1'000'000) / 997.0;
  const StatedTorque back = convert(convert({value, from}, to), from);
  RC_ASSERT(back.unit == from);
  // Four roundings of half a unit in the last place each.
  RC_ASSERT(std::abs(back.value - value) <= 4 * 0.5 * 2.3e-16 * value);
}

}  // namespace
}  // namespace steadyturn
