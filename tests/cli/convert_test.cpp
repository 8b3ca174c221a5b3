#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "run_sturn.h"

namespace steadyturn::test {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;

// 1 lbf·ft = 1.355 817 948 331 400 4 N·m, exact: foot 0.3048 m, pound 0.453 592 37 kg, g 9.806 65 m/s² (NIST SP 811,
// App. B).
TEST(Convert, GivesTheExactFactor) {
  const Answer answer = sturn({"convert", "20", "lbf.ft", "N.m", "--json"});
  ASSERT_EQ(answer.status, 0) << answer.err;
  EXPECT_DOUBLE_EQ(answer.json().at("value").get<double>(), 20 * 1.3558179483314004);
  EXPECT_EQ(answer.json().at("unit"), "N.m");
  EXPECT_EQ(answer.json().size(), 2u);
}

TEST(Convert, PrintsARoundedValueWithItsUnit) {
  EXPECT_EQ(sturn({"convert", "20", "lbf.ft", "N.m"}).out, "27.116 N.m\n");
}

TEST(Convert, ReadsUnitsAsPeopleTypeThem) {
  for (const char* foot : {"ft-lb", "lbf.ft", "ft lbf", "LBF.FT", "lb-ft"}) {
    for (const char* metre : {"Nm", "N\xC2\xB7m", "N m", "N.m"}) {
      EXPECT_EQ(sturn({"convert", "10", foot, metre}).out, "13.558 N.m\n") << foot << " to " << metre;
    }
  }
}

struct Bad {
  std::vector<std::string> arguments;
  int status;
  std::string names, found;
};

TEST(Convert, RefusesInOneLineThatSaysWhat) {
  const Bad bad[]{{{"20", "Nx", "N.m"}, 65, "FROM", "Nx"},        {{"20", "N.m", "volt"}, 65, "TO", "volt"},
                  {{"1O.5", "N.m", "N.m"}, 65, "VALUE", "1O.5"},  {{"nan", "N.m", "N.m"}, 65, "VALUE", "nan"},
                  {{"inf", "N.m", "N.m"}, 65, "VALUE", "inf"},    {{"1e999", "N.m", "N.m"}, 65, "VALUE", "1e999"},
                  {{"-5", "N.m", "N.m"}, 65, "VALUE", "-5"},      {{"0x10", "N.m", "N.m"}, 65, "VALUE", "0x10"},
                  {{"", "N.m", "N.m"}, 65, "VALUE", "nothing"},   {{"20", "N.m"}, 64, "TO", "required"},
                  {{"20", "N.m", "N.m", "more"}, 64, "more", ""}, {{"20", "N.m", "N.m", "--frob"}, 64, "--frob", ""}};
  for (const Bad& one : bad) {
    std::vector<std::string> arguments{"convert"};
    arguments.insert(arguments.end(), one.arguments.begin(), one.arguments.end());
    const Answer answer = sturn(arguments);
    EXPECT_EQ(answer.status, one.status) << answer.err;
    EXPECT_EQ(answer.out, "");
    EXPECT_THAT(answer.err, AllOf(HasSubstr(one.names), HasSubstr(one.found)));
    EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 1) << answer.err;
  }
}

TEST(Convert, TakesAllThatIsWrongTogether) {
  const Answer answer = sturn({"convert", "x", "y", "z"});
  EXPECT_EQ(answer.status, 65);
  EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 3) << answer.err;
}

}  // namespace
}  // namespace steadyturn::test
