#include <gmock/gmock.h>
#include <sys/stat.h>
#include <unistd.h>

#include <fstream>

#include "temp_shop.h"

namespace steadyturn::test {
namespace {

using ::testing::HasSubstr;

TEST_F(NewShop, IsNamedBeforeOrAfterTheCommandOrByTheEnvironment) {
  EXPECT_EQ(sturn({"--shop", shop, "tool", "list"}).status, 0);
  EXPECT_EQ(sturn({"tool", "list", "--shop", shop}).status, 0);
  Setting setting;
  setting.environment = {"STURN_SHOP=" + shop};
  EXPECT_EQ(sturn({"tool", "list"}, setting).status, 0);
}

TEST_F(NewShop, WithoutANameIsBadUsageThatSaysHow) {
  const Answer answer = sturn({"tool", "list"});
  EXPECT_EQ(answer.status, 64);
  EXPECT_THAT(answer.err, HasSubstr("STURN_SHOP"));
  EXPECT_EQ(sturn({"init"}).status, 64);
}

TEST_F(NewShop, InitMakesNoSecondShopOverTheFirst) {
  const std::string before = folder.read("shop.st");
  EXPECT_EQ(sturn({"init", shop}).status, 73);
  EXPECT_EQ(sturn({"demo", "--shop", shop}).status, 73);
  EXPECT_EQ(folder.read("shop.st"), before);
}

TEST_F(NewShop, CannotBeWhatIsNotAShop) {
  EXPECT_EQ(onShop(folder.file("text.csv", "no database, only text"), {"tool", "list"}).status, 69);
  EXPECT_EQ(onShop(folder.file("empty", ""), {"tool", "list"}).status, 69);
  EXPECT_EQ(onShop(folder.path("."), {"tool", "list"}).status, 69);
  EXPECT_EQ(onShop(folder.path("missing"), {"tool", "list"}).status, 69);
  EXPECT_EQ(sturn({"init", folder.path("no/such/folder.st")}).status, 73);
}

TEST_F(NewShop, InAReadOnlyFolderCannotBeMade) {
  // The superuser may write everywhere but where the kernel has no files to make.
  std::string closed = "/proc";
  if (::geteuid() != 0) {
    closed = folder.path("closed");
    ASSERT_EQ(::mkdir(closed.c_str(), 0555), 0);
  }
  EXPECT_EQ(sturn({"init", closed + "/shop.st"}).status, 73);
  EXPECT_EQ(sturn({"demo", closed + "/shop.st"}).status, 73);
}

TEST_F(NewShop, HelpOfEveryCommandNamesItsOptionsWithAnExample) {
  const struct {
    std::vector<std::string> command;
    std::vector<std::string> options;
  } all[]{{{"init"}, {"FILE", "--name"}},
          {{"demo"}, {"FILE"}},
          {{"tool", "add"}, {"--type", "--class", "--min", "--max", "--unit", "--resolution", "--interval-days"}},
          {{"tool", "list"}, {"--json"}},
          {{"tool", "show"}, {"--json"}},
          {{"tool", "hold"}, {"--reason"}},
          {{"tool", "release"}, {"--reason"}},
          {{"tool", "retire"}, {"--reason"}},
          {{"reference", "add"}, {"--expanded-uncertainty-percent", "--coverage-factor", "--error-percent"}},
          {{"reference", "list"}, {"--json"}},
          {{"reference", "show"}, {"--json"}},
          {{"check", "record"}, {"--tool", "--reference", "--phase", "--date", "--readings", "--decimal", "--by"}},
          {{"check", "list"}, {"--tool"}},
          {{"check", "show"}, {"CHECK"}},
          {{"check", "correct"}, {"--reason", "--readings"}},
          {{"drift"}, {"TOOL", "--as-of"}},
          {{"due"}, {"--as-of", "--within"}},
          {{"fastener", "add"}, {"--component", "--target", "--part-limit", "--part-material", "--source"}},
          {{"fastener", "list"}, {"--json"}},
          {{"fastener", "find"}, {"WORDS"}},
          {{"fastener", "show"}, {"--json"}},
          {{"fastener", "revise"}, {"--reason"}},
          {{"choose"}, {"--as-of", "--wrench-length", "--offset", "--angle", "mm"}},
          {{"job", "tighten"}, {"--fastener", "--tool", "--setting", "--seat-checked"}},
          {{"job", "show"}, {"JOB"}},
          {{"recall"}, {"TOOL"}},
          {{"import"}, {"--decimal", "--again", "--by"}},
          {{"export"}, {"--decimal"}},
          {{"report", "certificate"}, {"--output", ".pdf"}},
          {{"report", "history"}, {"--output", ".svg", "--as-of"}}};
  for (const auto& one : all) {
    auto arguments = one.command;
    arguments.emplace_back("--help");
    const Answer answer = sturn(arguments);
    EXPECT_EQ(answer.status, 0) << answer.err;
    for (const std::string& option : one.options) EXPECT_THAT(answer.out, HasSubstr(option));
    EXPECT_THAT(answer.out, HasSubstr("Example: sturn " + one.command.front()));
    EXPECT_THAT(answer.out, HasSubstr("--shop"));
  }
  for (const char* group : {"tool", "reference", "check", "fastener", "job", "report"}) {
    EXPECT_EQ(sturn({group, "--help"}).status, 0);
    EXPECT_EQ(sturn({group, "--shop", shop}).status, 64);
  }
}

}  // namespace
}  // namespace steadyturn::test
