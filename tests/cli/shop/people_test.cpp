// Every role on every command, and a whole audit session that leaves no trace.
#include <gmock/gmock.h>

#include <algorithm>
#include <iterator>
#include <map>
#include <set>
#include <sstream>

#include "temp_shop.h"

namespace steadyturn::test {
namespace {

using ::testing::HasSubstr;

constexpr const char* leadPin = "lead passphrase";

// Runs a command for somebody; nobody where `as` is empty.
Answer onShopAs(const std::string& shop, const std::string& as, std::vector<std::string> arguments) {
  const std::map<std::string, std::string> pins{{"nora", leadPin}, {"petra", "2468"}, {"olaf", "1357"}};
  arguments.insert(arguments.begin(), {"--shop", shop});
  Setting setting;
  setting.environment = {"STURN_NEW_PIN=8642", "STURN_PASSPHRASE=words of the key",
                         "STURN_NEW_PASSPHRASE=words of the key"};
  if (!as.empty()) {
    arguments.insert(arguments.end(), {"--as", as});
    setting.environment.push_back("STURN_PIN=" + pins.at(as));
  }
  return sturn(arguments, setting);
}

enum class By { Everybody, Technician, Lead };

struct Row {
  const char* command;  // words, "@" the person's name, "%" a folder to write to
  By by;
  int nora = 0;  // what a lead gets
};

// Nora's run of a command comes first and must work; what is done once has "@" in its mark.
constexpr Row rows[]{
    {"init %/new-@.st", By::Everybody},
    {"tool add T-@ --type II --class A --min 20 --max 100 --unit N.m --resolution 1", By::Lead},
    {"tool list", By::Everybody},
    {"tool show T1", By::Everybody},
    {"tool hold H-@", By::Technician},
    {"tool release T-held", By::Lead},
    {"tool retire T-nora", By::Lead},
    {"tool group T1 --name vans", By::Lead},
    {"reference add R-@ --expanded-uncertainty-percent 0.4", By::Lead},
    {"reference read R-dcc %/missing.xml", By::Lead, 66},
    {"reference list", By::Everybody},
    {"reference show R1", By::Everybody},
    {"check record --tool T1 --reference R1 --phase as_found --date 2026-02-10 --readings %/readings.csv", By::Lead},
    {"check list", By::Everybody},
    {"check show 1", By::Everybody},
    {"check correct 2 --reason typo --readings %/readings.csv", By::Lead},
    {"drift T1", By::Everybody},
    {"due", By::Everybody},
    {"fastener add F-@ --component plug --target 40 --unit N.m", By::Lead},
    {"fastener list", By::Everybody},
    {"fastener find plug", By::Everybody},
    {"fastener show F1", By::Everybody},
    {"fastener approve F1 --by somebody", By::Lead},
    {"fastener revise F1 --reason typo --target 41", By::Lead},
    {"fastener limit P1 --stripping 6 --record", By::Lead},
    {"fastener synonym add bung-@ plug", By::Lead},
    {"fastener synonym list", By::Everybody},
    {"fastener synonym remove bung-nora", By::Lead},
    {"choose F1 --as-of 2026-02-10", By::Everybody},
    {"job open J-@ --vehicle van", By::Technician},
    {"job tighten J-@ --fastener F1 --tool T1 --setting 40 --unit N.m --date 2026-02-10", By::Technician},
    {"job show J-nora", By::Everybody},
    {"job close J-@ --reason done", By::Technician},
    {"job list", By::Everybody},
    {"service set oil F1", By::Lead},
    {"service list", By::Everybody},
    {"recall T1", By::Everybody},
    {"recall T1 --close --by somebody", By::Lead, 65},  // nothing is in doubt
    {"backtest", By::Everybody},
    {"interval T1", By::Everybody},
    {"import tools %/tools.csv", By::Lead},
    {"export tools %/out-@.csv", By::Everybody},
    {"report certificate 1 -o %/certificate-@.csv", By::Everybody},
    {"report history T1 -o %/history-@.csv", By::Everybody},
    {"report job J-nora -o %/job-@.csv", By::Everybody},
    {"report due -o %/due-@.csv", By::Everybody},
    {"report register -o %/register-@.csv", By::Everybody},
    {"report recall T-bad -o %/recall-@.csv", By::Everybody},
    {"report labels T1 -o %/labels-@.pdf", By::Everybody},
    {"verify", By::Everybody},
    {"backup %/backup-@.st", By::Everybody},
    {"ledger export %/ledger-@.jsonl", By::Everybody},
    {"ledger prove 1", By::Everybody},
    {"key make --holder Nora", By::Lead},
    {"key show", By::Everybody},
    {"key replace --holder Nora", By::Lead},
    {"key passphrase", By::Lead},
    {"ledger close", By::Lead},
    {"shop show", By::Everybody},
    {"shop set --place hall-@", By::Lead},
    {"user list", By::Everybody},
    {"user add new-@ --role auditor", By::Lead},
    {"user role new-nora --role technician", By::Lead},
    {"user pin new-nora", By::Lead},
    {"user code", By::Lead},
    {"user close new-nora", By::Lead},
};
// They ask for no role: who has the recovery code, or makes a file of their own. (restore --replace:
// keeping_test.cpp.)
const std::set<std::string> outside{
    "convert",        "demo",           "evaluate check", "evaluate drift", "evaluate delivery",
    "evaluate fleet", "evaluate joint", "user recover",   "restore",        "move"};

std::vector<std::string> wordsOf(const std::string& text) {
  std::istringstream in(text);
  return {std::istream_iterator<std::string>(in), {}};
}

std::string replaced(std::string text, char mark, const std::string& by) {
  for (std::size_t at = 0; (at = text.find(mark, at)) != std::string::npos; at += by.size()) text.replace(at, 1, by);
  return text;
}

// Every command that the program's own help names, for example "tool add".
void gatherCommands(const std::vector<std::string>& path, std::set<std::string>& into) {
  auto arguments = path;
  arguments.emplace_back("--help");
  const std::string help = sturn(arguments).out;
  const auto list = help.find("Subcommands:");
  std::string name;
  for (const auto& word : path) name += (name.empty() ? "" : " ") + word;
  if (list == std::string::npos) {
    into.insert(name);
    return;
  }
  std::istringstream lines(help.substr(list));
  std::string line;
  std::getline(lines, line);
  while (std::getline(lines, line)) {
    if (line.size() < 3 || line[0] != ' ' || line[1] != ' ') break;
    if (line[2] == ' ') continue;  // a purpose goes on
    auto deeper = path;
    deeper.push_back(line.substr(2, line.find(' ', 2) - 2));
    gatherCommands(deeper, into);
  }
}

class People : public NewShop {
 protected:
  void SetUp() override {
    addToolAndReference();
    for (const char* tool : {"T-held", "H-nora", "H-petra"}) {
      ASSERT_EQ(run({"tool", "add", tool, "--type", "II", "--class", "A", "--max", "100", "--unit", "N.m"}).status,
                0);
    }
    folder.file("tools.csv", "tool,type,class,max,unit\nT-imported,II,A,100,N.m\n");
    const std::string csv = "target,reading,unit\n20,20.1,N.m\n60,60,N.m\n100,100,N.m\n";
    for (const char* tool : {"T1", "T-held"}) {
      ASSERT_EQ(run({"check", "record", "--tool", tool, "--reference", "R1", "--phase", "as_found", "--date",
                     "2026-02-09", "--readings", folder.file("readings.csv", csv)})
                    .status,
                0);
    }
    ASSERT_EQ(run({"tool", "hold", "T-held"}).status, 0);
    ASSERT_EQ(run({"tool", "add", "T-bad", "--type", "II", "--class", "A", "--max", "100", "--unit", "N.m"}).status,
              0);
    const std::string bad = "target,reading,unit\n20,30,N.m\n60,60,N.m\n100,100,N.m\n";
    ASSERT_EQ(run({"check", "record", "--tool", "T-bad", "--reference", "R1", "--phase", "as_found", "--date",
                   "2026-02-09", "--readings", folder.file("bad.csv", bad)})
                  .status,
              0);
    for (const char* mark : {"F1", "P1"}) {
      ASSERT_EQ(run({"fastener", "add", mark, "--component", "plug", "--part-material", "plastic", "--target",
                     mark == std::string("F1") ? "40" : "3", "--unit", "N.m"})
                    .status,
                0);
    }
    Setting first;
    first.environment = {std::string("STURN_PIN=") + leadPin};
    const Answer closed = sturn({"--shop", shop, "user", "add", "nora", "--role", "lead"}, first);
    ASSERT_EQ(closed.status, 0) << closed.err;
    EXPECT_THAT(closed.out, HasSubstr("Recovery code"));
    add("petra", "technician", "2468");
    add("olaf", "auditor", "1357");
  }
  void add(const std::string& name, const std::string& role, const std::string& pin) const {
    Setting setting;
    setting.environment = {std::string("STURN_PIN=") + leadPin, "STURN_NEW_PIN=" + pin};
    const Answer added = sturn({"--shop", shop, "--as", "nora", "user", "add", name, "--role", role}, setting);
    ASSERT_EQ(added.status, 0) << added.err;
  }
  std::string commandFor(const Row& row, const std::string& as) const {
    return replaced(replaced(row.command, '@', as.empty() ? "nobody" : as), '%', folder.path("."));
  }
};

TEST_F(People, EveryRoleOnEveryCommand) {
  for (const Row& row : rows) {
    const std::string command = row.command;
    for (const char* as : {"nora", "petra", "olaf", ""}) {
      const std::string who = as;
      const bool may = row.by == By::Everybody || who == "nora" || (row.by == By::Technician && who == "petra");
      const Answer answer = onShopAs(shop, who, wordsOf(commandFor(row, who)));
      EXPECT_EQ(answer.status, may ? (who == "nora" ? row.nora : 0) : 77)
          << (who.empty() ? "nobody" : who) << ": " << command << "\n"
          << answer.err;
    }
  }
  std::set<std::string> all;
  gatherCommands({}, all);
  for (const auto& command : all) {
    const bool tried = outside.contains(command) ||
                       std::any_of(std::begin(rows), std::end(rows),
                                   [&](const Row& row) { return std::string(row.command).starts_with(command); });
    EXPECT_TRUE(tried) << command << " is in no line of this table: who may?";
  }
  EXPECT_GT(all.size(), 50U);
  EXPECT_EQ(onShopAs(shop, "", {"verify"}).status, 0);
}

TEST_F(People, AWrongPinAndAnUnknownNameAreNotLetIn) {
  Setting wrong;
  wrong.environment = {"STURN_PIN=9999"};
  EXPECT_EQ(sturn({"--shop", shop, "--as", "nora", "tool", "list"}, wrong).status, 77);
  EXPECT_EQ(sturn({"--shop", shop, "--as", "mallory", "tool", "list"}, wrong).status, 77);
  // Without the environment the PIN is a line of standard input.
  Setting typed;
  typed.input = "2468\n";
  EXPECT_EQ(sturn({"--shop", shop, "--as", "petra", "tool", "hold", "T1"}, typed).status, 0);
  typed.input.clear();
  const Answer none = sturn({"--shop", shop, "--as", "petra", "tool", "hold", "T1"}, typed);
  EXPECT_EQ(none.status, 77);
  EXPECT_THAT(none.err, HasSubstr("STURN_PIN"));
}

TEST_F(People, ANewcomerWithoutAPinGetsOneThatWorks) {
  Setting setting;
  setting.environment = {std::string("STURN_PIN=") + leadPin};
  const Answer added =
      sturn({"--shop", shop, "--as", "nora", "user", "add", "jo", "--role", "technician", "--json"}, setting);
  ASSERT_EQ(added.status, 0) << added.err;
  setting.environment = {"STURN_PIN=" + added.json().at("pin").get<std::string>()};
  EXPECT_EQ(sturn({"--shop", shop, "--as", "jo", "tool", "hold", "T1"}, setting).status, 0);
}

// Names, bytes and times of a folder's files.
std::map<std::string, std::string> pictureOf(const TempFolder& folder) {
  std::map<std::string, std::string> picture;
  for (const auto& entry : std::filesystem::directory_iterator(folder.path("."))) {
    picture[entry.path().filename()] =
        folder.read(entry.path().filename()) + std::to_string(entry.last_write_time().time_since_epoch().count());
  }
  return picture;
}

TEST_F(People, AnAuditSessionLeavesNoTrace) {
  const TempFolder papers;
  const auto before = pictureOf(folder);
  bool asAuditor = false;  // by turns as somebody with the role, and by --audit
  for (const Row& row : rows) {
    const std::string command = replaced(replaced(row.command, '@', "olaf"), '%', papers.path("."));
    if (row.by != By::Everybody || command.find("J-nora") != std::string::npos || command.find("init") == 0) continue;
    asAuditor = !asAuditor;
    auto arguments = wordsOf(command);
    if (!asAuditor) arguments.emplace_back("--audit");
    const Answer answer = onShopAs(shop, asAuditor ? "olaf" : "", arguments);
    EXPECT_EQ(answer.status, 0) << command << answer.err;
    ASSERT_EQ(pictureOf(folder), before) << command;
  }
  EXPECT_EQ(onShopAs(shop, "olaf", {"tool", "hold", "T1"}).status, 77);
  EXPECT_EQ(onShopAs(shop, "nora", {"tool", "hold", "T1", "--audit"}).status, 77);
  EXPECT_EQ(pictureOf(folder), before);
}

}  // namespace
}  // namespace steadyturn::test
