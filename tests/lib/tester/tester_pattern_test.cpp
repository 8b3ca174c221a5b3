#include "tester_pattern.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace steadyturn {
namespace {

// The lines are inventions of ours; testers differ, which is why the pattern can be set.
TesterReading read(std::string_view pattern, std::string_view line, std::string_view peakMark = {}) {
  const auto parsed = parsePattern(pattern, peakMark);
  if (!parsed) throw std::runtime_error(parsed.error().front().accepted);
  const auto reading = parseTesterLine(*parsed, line);
  if (!reading) throw std::runtime_error(reading.error().front().found + " / " + reading.error().front().accepted);
  return *reading;
}

Problem problem(std::string_view pattern, std::string_view line) {
  const auto reading = parseTesterLine(parsePattern(pattern).value(), line);
  return reading ? Problem{} : reading.error().front();
}

TEST(TesterPattern, ReadsNumberUnitAndMark) {
  const auto reading = read("{mark} {value} {unit}", "PK  20.10 N·m\t", "PK");
  EXPECT_EQ(reading.value, "20.10");
  EXPECT_EQ(reading.unit, Unit::NewtonMetre);
  EXPECT_EQ(reading.mark, "PK");
  EXPECT_TRUE(reading.peak);
  EXPECT_FALSE(read("{mark} {value} {unit}", "TR 20.10 Nm", "PK").peak);
  EXPECT_TRUE(read("{mark} {value} {unit}", "TR 20.10 Nm").peak);
}

TEST(TesterPattern, ReadsANumberAlone) {
  const auto reading = read("{value}", "  19,8 ");
  EXPECT_EQ(reading.value, "19,8");
  EXPECT_EQ(reading.unit, std::nullopt);
  EXPECT_TRUE(reading.peak);
}

TEST(TesterPattern, TellsTheOtherDirectionByItsMinus) {
  EXPECT_TRUE(read("{value}", "- 19.8").negative);
  EXPECT_EQ(read("{value}", "- 19.8").value, "19.8");
  EXPECT_FALSE(read("{value}", "+19.8").negative);
}

TEST(TesterPattern, TakesUnitsAsDevicesWriteThem) {
  EXPECT_EQ(read("{value}{unit}", "14.6ft-lb").unit, Unit::PoundForceFoot);
  EXPECT_EQ(read("{value} {unit};{rest}", "175 in lbf;ok").unit, Unit::PoundForceInch);
  EXPECT_EQ(read("{value} {unit}", "19.8 N m").unit, Unit::NewtonMetre);
  EXPECT_EQ(read("{value} {unit} {skip}", "19.8 Nm OK").unit, Unit::NewtonMetre);
}

TEST(TesterPattern, PassesOverCountersTimesAndSigns) {
  EXPECT_EQ(read("{skip},{skip},{value},{unit}", "0012,10:41:07,20.1,Nm").value, "20.1");
  EXPECT_EQ(read("T={value} {unit}{rest}", "T=20.1 Nm  #7 *").value, "20.1");
  EXPECT_EQ(read("{mark}{value}", "P-20.1", "P").value, "20.1");
  EXPECT_EQ(read("{{{value}}", "{20.1}").value, "20.1");
}

TEST(TesterPattern, SaysWhyALineDoesNotMatch) {
  EXPECT_EQ(problem("{value} {unit}", "hello").accepted, "a number such as 12.5");
  EXPECT_EQ(problem("{value} {unit}", "hello").field, "line");
  EXPECT_EQ(problem("{value} {unit}", "20.1 bar").found, "bar");
  EXPECT_EQ(problem("{value} {unit}", "20.1 Nm 7").found, "7");
  EXPECT_EQ(problem("{value} {unit}", "20.1 Nm 7").accepted, "the end of the line");
  EXPECT_EQ(problem("T={value}", "X=20.1").accepted, "T=");
  EXPECT_EQ(problem("{mark} {value}", "").accepted, "a word");
  EXPECT_EQ(problem("{value}", ".").field, "line");
  EXPECT_EQ(problem("{value}", "1.2.3").found, ".3");
}

TEST(TesterPattern, RefusesWhatCanNotBeRead) {
  for (const char* typed : {"", "{unit}", "{value} {value}", "{valeu}", "{value", "{rest} {value}",
                            "{mark}{skip} {value}", "{value} {unit} {unit}"}) {
    const auto pattern = parsePattern(typed);
    ASSERT_FALSE(pattern) << typed;
    EXPECT_EQ(pattern.error().front().field, "pattern") << typed;
  }
  const auto mark = parsePattern("{value}", "PK");
  ASSERT_FALSE(mark);
  EXPECT_EQ(mark.error().front().field, "peak mark");
}

TEST(TesterPattern, IsTriedOnAPastedSample) {
  const auto tried = tryPattern(parsePattern("{value} {unit}").value(), "20.1 Nm\r\nready\r\n19.9 Nm");
  ASSERT_EQ(tried.size(), 3u);
  EXPECT_EQ(tried[0].reading->value, "20.1");
  EXPECT_EQ(tried[1].line, "ready");
  EXPECT_FALSE(tried[1].reading);
  EXPECT_EQ(tried[2].reading->value, "19.9");
}

RC_GTEST_PROP(TesterPattern, TakesAnyNoiseWithoutHarm, ()) {
  const auto pattern = parsePattern("{mark} {value} {unit}{rest}").value();
  const auto line = *rc::gen::container<std::string>(rc::gen::arbitrary<char>());
  const auto reading = parseTesterLine(pattern, line);
  if (reading) RC_ASSERT(!reading->value.empty() && reading->unit.has_value());
}

}  // namespace
}  // namespace steadyturn
