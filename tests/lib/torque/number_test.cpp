#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>

#include "torque.h"

namespace steadyturn {
namespace {

TEST(ParseNumber, TakesDecimalsAsPeopleTypeThem) {
  EXPECT_EQ(parseNumber("12.5", "value"), 12.5);
  EXPECT_EQ(parseNumber(" 12.5 ", "value"), 12.5);
  EXPECT_EQ(parseNumber("+0.1", "value"), 0.1);
  EXPECT_EQ(parseNumber("-3", "value"), -3);
  EXPECT_EQ(parseNumber(".5", "value"), 0.5);
  EXPECT_EQ(parseNumber("5.", "value"), 5);
  EXPECT_EQ(parseNumber("1e3", "value"), 1000);
  EXPECT_EQ(parseNumber("2.5E-3", "value"), 0.0025);
  EXPECT_EQ(parseNumber("007", "value"), 7);
}

TEST(ParseNumber, TakesTheDecimalCommaOnlyWhereItIsAskedFor) {
  EXPECT_EQ(parseNumber("12,5", "value", true), 12.5);
  EXPECT_EQ(parseNumber("12", "value", true), 12);
  EXPECT_FALSE(parseNumber("12,5", "value"));
  // Where the comma is the decimal sign, a point groups thousands: reading 1.250 as 1.25 would be a guess.
  EXPECT_FALSE(parseNumber("1.250", "value", true));
  EXPECT_FALSE(parseNumber("1.250,5", "value", true));
}

TEST(ParseNumber, RefusesWhatIsNotADecimalNumber) {
  for (const char* bad :
       {"1O.5", "l0", "NaN", "nan", "inf",   "-inf", "Infinity", "0x10", "1e",    "1e+",   "",   " ",     ".",
        "-",    "+",  "--1", "+-1", "1.2.3", "1 2",  "12.5 N.m", "e5",   "1_000", "1'000", "١٢", "1e400", "-1e400"}) {
    const Result<double> number = parseNumber(bad, "points[0].target");
    ASSERT_FALSE(number) << bad;
    ASSERT_EQ(number.error().size(), 1u);
    EXPECT_EQ(number.error()[0].kind, ProblemKind::BadInput);
    EXPECT_EQ(number.error()[0].field, "points[0].target");
    EXPECT_EQ(number.error()[0].found, bad);
    EXPECT_FALSE(number.error()[0].accepted.empty());
  }
  EXPECT_FALSE(parseNumber(std::string_view("1\0", 2), "value"));
}

TEST(ParseTorqueNumber, RefusesANegativeTorque) {
  EXPECT_EQ(parseTorqueNumber("12.5", "value"), 12.5);
  EXPECT_EQ(parseTorqueNumber("0", "value"), 0);
  EXPECT_FALSE(std::signbit(parseTorqueNumber("-0", "value").value_or(-1)));
  const Result<double> negative = parseTorqueNumber("-1", "setting");
  ASSERT_FALSE(negative);
  EXPECT_EQ(negative.error()[0].field, "setting");
  EXPECT_EQ(negative.error()[0].found, "-1");
  EXPECT_FALSE(parseTorqueNumber("1O.5", "setting"));
}

TEST(WriteNumber, IsTheShortestTextThatReadsBack) {
  EXPECT_EQ(writeNumber(0), "0");
  EXPECT_EQ(writeNumber(0.1), "0.1");
  EXPECT_EQ(writeNumber(20), "20");
  EXPECT_EQ(writeNumber(27.116), "27.116");
  EXPECT_EQ(writeNumber(0.1 + 0.2), "0.30000000000000004");
  EXPECT_EQ(writeNumber(-1.25), "-1.25");
}

TEST(WriteNumber, AvoidsAnExponentWhereItStaysShort) {
  EXPECT_EQ(writeNumber(100000), "100000");
  EXPECT_EQ(writeNumber(1e15), "1000000000000000");
  EXPECT_EQ(writeNumber(0.0001), "0.0001");
  EXPECT_EQ(writeNumber(0.00001), "0.00001");
  EXPECT_EQ(writeNumber(1e-9), "1e-09");
  EXPECT_EQ(writeNumber(1e300), "1e+300");
}

RC_GTEST_PROP(WriteNumber, ReadsBackAsTheSameDouble, (std::uint64_t bits)) {
  const double value = std::bit_cast<double>(bits);
  RC_PRE(std::isfinite(value));
  const Result<double> back = parseNumber(writeNumber(value), "value");
  RC_ASSERT(back.has_value());
  RC_ASSERT(std::bit_cast<std::uint64_t>(*back) == bits);
}

TEST(WriteNumber, ReadsBackAtTheEndsOfTheRange) {
  using Limits = std::numeric_limits<double>;
  for (double value : {Limits::max(), Limits::lowest(), Limits::min(), Limits::denorm_min(), Limits::epsilon()}) {
    EXPECT_EQ(parseNumber(writeNumber(value), "value"), value) << value;
  }
}

TEST(WriteRounded, RoundsToSignificantDigitsAndDropsZeros) {
  EXPECT_EQ(writeRounded(27.116358966628), "27.12");
  EXPECT_EQ(writeRounded(20), "20");
  EXPECT_EQ(writeRounded(20.000000000000004), "20");
  EXPECT_EQ(writeRounded(123456), "123500");
  EXPECT_EQ(writeRounded(0.00012345), "0.0001234");  // the double just below …45
  EXPECT_EQ(writeRounded(-1.048433, 3), "-1.05");
  EXPECT_EQ(writeRounded(9.9996), "10");
  EXPECT_EQ(writeRounded(0.30000000000000004, 15), "0.3");
  EXPECT_EQ(writeRounded(1234.5, 1), "1000");
}

TEST(WriteRounded, WritesNoNegativeZero) {
  EXPECT_EQ(writeRounded(0), "0");
  EXPECT_EQ(writeRounded(-0.0), "0");
}

TEST(WriteRounded, UsesAnExponentOnlyOutsideTheOrdinary) {
  EXPECT_EQ(writeRounded(1e9), "1000000000");
  EXPECT_EQ(writeRounded(0.0001), "0.0001");
  EXPECT_EQ(writeRounded(2e9), "2e+09");
  EXPECT_EQ(writeRounded(0.00002), "2e-05");
}

}  // namespace
}  // namespace steadyturn
