#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "run_sturn.h"

namespace steadyturn::test {
namespace {

using ::testing::HasSubstr;
using ::testing::StartsWith;

TEST(Usage, HelpOfEachLevelSaysPurposeOptionsAndAnExample) {
  const std::vector<std::vector<std::string>> commands{{},
                                                       {"convert"},
                                                       {"evaluate"},
                                                       {"evaluate", "check"},
                                                       {"evaluate", "drift"},
                                                       {"evaluate", "delivery"},
                                                       {"evaluate", "joint"}};
  for (auto command : commands) {
    command.push_back("--help");
    const Answer answer = sturn(command);
    EXPECT_EQ(answer.status, 0) << answer.err;
    EXPECT_EQ(answer.err, "");
    EXPECT_THAT(answer.out, HasSubstr("--help"));
    EXPECT_THAT(answer.out, HasSubstr("Example"));
  }
}

TEST(Usage, HelpShowsTheDocumentOfACalculation) {
  EXPECT_THAT(sturn({"evaluate", "check", "--help"}).out, HasSubstr("\"readings\": {\"unit\""));
  EXPECT_THAT(sturn({"convert", "--help"}).out, HasSubstr("lbf.in"));
}

TEST(Usage, VersionIsOneLine) {
  const Answer answer = sturn({"--version"});
  EXPECT_EQ(answer.status, 0);
  EXPECT_THAT(answer.out, ::testing::MatchesRegex("sturn [0-9]+\\.[0-9]+\\.[0-9]+\n"));
}

TEST(Usage, MistakesEndWith64AndPointToTheHelp) {
  const std::vector<std::vector<std::string>> commands{
      {}, {"frobnicate"}, {"--frobnicate"}, {"evaluate"}, {"evaluate", "everything"}, {"evaluate", "check", "extra"}};
  for (const auto& command : commands) {
    const Answer answer = sturn(command);
    EXPECT_EQ(answer.status, 64) << answer.err;
    EXPECT_EQ(answer.out, "");
    EXPECT_THAT(answer.err, StartsWith("sturn: "));
    EXPECT_THAT(answer.err, HasSubstr("--help"));
  }
  EXPECT_THAT(sturn({"frobnicate"}).err, HasSubstr("frobnicate"));
}

TEST(Usage, RefusesArgumentsThatAreNotUtf8) {
  const Answer answer = sturn({"convert", "20", "N\xB7m", "N.m"});
  EXPECT_EQ(answer.status, 65);
  EXPECT_THAT(answer.err, HasSubstr("argument 3"));
}

TEST(Usage, AFullDiskUnderTheOutputIsAnError) {
  const Answer answer = sturn({"convert", "20", "N.m", "cN.m"},
                              {.input = {}, .environment = {}, .outputFile = "/dev/full", .folder = {}});
  EXPECT_EQ(answer.status, 73);
  EXPECT_THAT(answer.err, HasSubstr("standard output"));
}

TEST(Usage, HelpOnAFullDiskIsAnErrorToo) {
  EXPECT_EQ(sturn({"--help"}, {.input = {}, .environment = {}, .outputFile = "/dev/full", .folder = {}}).status, 73);
}

}  // namespace
}  // namespace steadyturn::test
