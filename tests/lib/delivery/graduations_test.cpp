#include "graduations.h"

#include <gtest/gtest.h>

#include "delivery_example.h"

namespace steadyturn {
namespace {

using testing::newtonMetres;

TEST(Graduations, AreTheCleanDecimalsOnTheDial) {
  const Graduations tenths(newtonMetres(0.1), {});
  for (std::int64_t k = 1; k <= 3000; ++k) {
    EXPECT_EQ(tenths.at(k).value, static_cast<double>(k) / 10) << k;  // division of whole numbers rounds correctly
  }
  EXPECT_EQ(tenths.at(179).value, 17.9);
  EXPECT_EQ(Graduations({.value = 0.05, .unit = Unit::PoundForceFoot}, {}).at(7),
            (StatedTorque{.value = 0.35, .unit = Unit::PoundForceFoot}));
}

TEST(Graduations, KeepTheRangeWithItsEnds) {
  const Graduations range(newtonMetres(0.1), {.low = newtonMetres(7.3), .high = newtonMetres(7.9)});
  EXPECT_EQ(range.first(), 73);
  EXPECT_EQ(range.last(), 79);
  const Graduations between(newtonMetres(0.5), {.low = newtonMetres(7.1), .high = newtonMetres(7.4)});
  EXPECT_TRUE(between.empty());
  const Graduations fromZero(newtonMetres(0.5), {.low = newtonMetres(0), .high = newtonMetres(2)});
  EXPECT_EQ(fromZero.first(), 1);
}

TEST(Graduations, RangeMayBeInAnotherUnit) {
  const Graduations range(newtonMetres(1),
                          {.low = StatedTorque{.value = 10, .unit = Unit::PoundForceFoot}, .high = {}});
  EXPECT_EQ(range.first(), 14);  // 13.558 N·m
}

TEST(Graduations, FindWhereSomethingBecomesTrue) {
  const Graduations range(newtonMetres(0.1), {.low = newtonMetres(1), .high = newtonMetres(9)});
  EXPECT_EQ(range.firstWhere([](StatedTorque s) { return s.value >= 4.55; }), 46);
  EXPECT_EQ(range.firstWhere([](StatedTorque) { return true; }), 10);
  EXPECT_EQ(range.firstWhere([](StatedTorque) { return false; }), 91);
}

TEST(Graduations, TinyAndHugeTorquesStayThemselves) {
  EXPECT_EQ(cleanDecimal(newtonMetres(1e-300)).value, 1e-300);
  EXPECT_EQ(cleanDecimal(newtonMetres(0)).value, 0);
  EXPECT_EQ(cleanDecimal(newtonMetres(27.500000000000004)).value, 27.5);
  EXPECT_EQ(cleanDecimal(newtonMetres(1234567.0000000002)).value, 1234567);
}

}  // namespace
}  // namespace steadyturn
