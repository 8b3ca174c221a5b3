#include "friction_range.h"

#include <gtest/gtest.h>

namespace steadyturn {
namespace {

// VDI 2230 Part 1, M8 8.8: 19.1 kN / 21.6 N·m at friction 0.10, 18.6 / 24.6 at 0.12, 18.1 / 27.3 at 0.14 (from
// memory; the formula agrees within 1 %).
TEST(FrictionRange, PassesThroughTheTabulatedPoints) {
  const auto points = overFriction(*parseThread("M8", "thread"), PropertyClass::C8_8);
  ASSERT_TRUE(points);
  ASSERT_EQ(points->size(), 13U);
  EXPECT_DOUBLE_EQ(points->front().friction, 0.08);
  EXPECT_DOUBLE_EQ(points->back().friction, 0.20);
  struct Tabulated {
    std::size_t at;
    double kilonewtons, newtonMetres;
  };
  for (const auto& [at, preload, torque] : {Tabulated{2, 19.1, 21.6}, {4, 18.6, 24.6}, {6, 18.1, 27.3}}) {
    EXPECT_NEAR((*points)[at].preloadN / 1000, preload, preload * 0.01);
    EXPECT_NEAR((*points)[at].torqueNm, torque, torque * 0.01);
  }
}

// More friction: less preload for more torque.
TEST(FrictionRange, RisesInTorqueAndFallsInPreload) {
  const auto points = overFriction(*parseThread("M14x1.5", "thread"), PropertyClass::C10_9);
  ASSERT_TRUE(points);
  for (std::size_t i = 1; i < points->size(); ++i) {
    EXPECT_GT((*points)[i].torqueNm, (*points)[i - 1].torqueNm);
    EXPECT_LT((*points)[i].preloadN, (*points)[i - 1].preloadN);
  }
}

}  // namespace
}  // namespace steadyturn
