#include "set_points.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "check_fixture.h"

namespace steadyturn {
namespace {

using testing::newtonMetres;

constexpr ToolKind adjustable{ToolType::Setting, ToolClass::A};
constexpr ToolKind fixed{ToolType::Setting, ToolClass::B};

std::vector<double> valuesOf(const std::vector<StatedTorque>& points) {
  std::vector<double> values;
  for (StatedTorque point : points) values.push_back(point.value);
  return values;
}

using Values = std::vector<double>;

// 20, 60 and 100 % of the maximum: ISO 6789:2003, read in an instrument's instruction sheet.
TEST(SetPoints, WithoutAMarkedMinimumTheyBeginAt20Percent) {
  EXPECT_EQ(valuesOf(proposeSetPoints(adjustable, {}, newtonMetres(100), {})), (Values{20, 60, 100}));
  EXPECT_EQ(valuesOf(proposeSetPoints(adjustable, {}, newtonMetres(0.5), {})), (Values{0.1, 0.3, 0.5}));
}

// The lowest marked value first: ISO 6789-1:2017, read in a trade article.
TEST(SetPoints, WithAMarkedMinimumTheyBeginThere) {
  EXPECT_EQ(valuesOf(proposeSetPoints(adjustable, newtonMetres(10), newtonMetres(100), {})), (Values{10, 60, 100}));
  const auto mixed = proposeSetPoints(adjustable, StatedTorque{150, Unit::CentinewtonMetre}, newtonMetres(6), {});
  EXPECT_EQ(valuesOf(mixed), (Values{1.5, 3.6, 6}));
}

TEST(SetPoints, AreInTheMaximumsUnit) {
  for (StatedTorque point : proposeSetPoints(adjustable, newtonMetres(30), {150, Unit::PoundForceFoot}, {})) {
    EXPECT_EQ(point.unit, Unit::PoundForceFoot);
  }
}

TEST(SetPoints, FallOnTheGraduation) {
  EXPECT_EQ(valuesOf(proposeSetPoints(adjustable, {}, newtonMetres(25), newtonMetres(0.5))), (Values{5, 15, 25}));
  EXPECT_EQ(valuesOf(proposeSetPoints(adjustable, {}, newtonMetres(12), newtonMetres(0.5))), (Values{2.5, 7, 12}));
  EXPECT_EQ(valuesOf(proposeSetPoints(adjustable, {}, newtonMetres(1.5), newtonMetres(0.1))),
            (Values{0.3, 0.9, 1.5}));
  // A graduation wider than 20 % of the maximum: the first one, never zero.
  EXPECT_EQ(valuesOf(proposeSetPoints(adjustable, {}, newtonMetres(10), newtonMetres(5))), (Values{5, 10}));
}

TEST(SetPoints, AFixedToolHasItsValueOnly) {
  EXPECT_EQ(valuesOf(proposeSetPoints(fixed, {}, newtonMetres(45), {})), (Values{45}));
}

TEST(SetPoints, ARangeThatBeginsAbove60PercentLeavesTheMiddleOut) {
  EXPECT_EQ(valuesOf(proposeSetPoints(adjustable, newtonMetres(70), newtonMetres(100), {})), (Values{70, 100}));
  EXPECT_EQ(valuesOf(proposeSetPoints(adjustable, newtonMetres(100), newtonMetres(100), {})), (Values{100}));
}

RC_GTEST_PROP(SetPoints, RiseAndEndAtTheMaximum, ()) {
  const double maximum = *rc::gen::inRange(1, 20000) / 8.0;
  const double graduation = *rc::gen::inRange(1, 100) / 16.0;
  RC_PRE(graduation <= maximum);
  const Values values = valuesOf(proposeSetPoints(adjustable, {}, newtonMetres(maximum), newtonMetres(graduation)));
  RC_ASSERT(values.back() == maximum);
  RC_ASSERT(values.front() > 0);
  for (std::size_t i = 0; i + 1 < values.size(); ++i) {
    RC_ASSERT(values[i] < values[i + 1]);
    RC_ASSERT(std::abs(std::remainder(values[i], graduation)) < 1e-9);
  }
}

}  // namespace
}  // namespace steadyturn
