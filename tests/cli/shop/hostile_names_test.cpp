// Names that mean something to somebody on the way: to SQL, to a spreadsheet, to XML, to a terminal, or too long for
// a line. Typed on the command line they come into a shop and out of it again as they are, and do nothing.
//
// The formula characters: common practice, see formula_guard_test.cpp. Read back by Python's csv and ElementTree,
// qpdf and poppler.
#include <gmock/gmock.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <map>

#include "temp_shop.h"

namespace steadyturn::test {
namespace {

using nlohmann::json;
using ::testing::AnyOf;
using ::testing::HasSubstr;

// What a name is hostile to, and the name.
const std::map<std::string, std::string> names{
    {"a line", std::string(10'000, 'x')},
    {"a direction of writing",
     "\xE2\x80\xAE"
     "\xD9\x85\xD9\x81\xD8\xAA\xD8\xA7\xD8\xAD"
     "\xE2\x80\xAC 40"},
    {"a font", "\xF0\x9F\x94\xA7\xF0\x9F\x91\xA9\xE2\x80\x8D\xF0\x9F\x94\xA7 \xF0\x9F\x87\xAA\xF0\x9F\x87\xBA"},
    {"SQL", "x'); DROP TABLE check_record; DELETE FROM tool; --"},
    {"a condition of SQL", "\" OR 1=1 /* :name ? $1 */"},
    {"a spreadsheet", "=HYPERLINK(\"http://127.0.0.1/?\"&A1,\"report\")"},
    {"an older spreadsheet", "@SUM(1+1)*cmd|'/C calc'!A0"},
    {"a spreadsheet's signs", "+1+cmd|' /C calc'!A1"},
    {"who takes an apostrophe off", "'=1+1"},
    {"XML", "]]></name><x y=\"&outside;\"/><!DOCTYPE d><!-- "},
    {"a shell", "--json ../../../etc/passwd; rm -rf $(HOME) `id` | %s%n"},
};

// A mark is shorter than a name may be.
std::string markOf(const std::string& name) { return name.substr(0, 200); }

std::string answerOf(const std::string& command) {
  std::string answer;
  FILE* pipe = ::popen(command.c_str(), "r");
  std::array<char, 4096> part{};
  while (const std::size_t got = std::fread(part.data(), 1, part.size(), pipe)) answer.append(part.data(), got);
  EXPECT_EQ(::pclose(pipe), 0) << command;
  return answer;
}

// A shop in which every name stands wherever one is typed: a tool each, and a check of it.
class HostileNames : public NewShop {
 protected:
  HostileNames() {
    EXPECT_EQ(run({"reference", "add", "R1", "--expanded-uncertainty-percent", "0.4"}).status, 0);
    const auto readings = folder.file("readings.csv", "target,reading,unit\n20,20,N.m\n60,60,N.m\n");
    for (const auto& [to, name] : names) {
      const Answer added = run({"tool", "add", "--type=II", "--class=A", "--min=20", "--max=100", "--unit=N.m",
                                "--description=" + name, "--maker=" + name, "--serial=" + name, "--drive=" + name,
                                "--", markOf(name)});
      EXPECT_EQ(added.status, 0) << to << ": " << added.err;
      const Answer checked = run({"check", "record", "--tool=" + markOf(name), "--reference=R1", "--phase=as_found",
                                  "--date=2026-03-14", "--by=" + name, "--note=" + name, "--readings=" + readings});
      EXPECT_EQ(checked.status, 0) << to << ": " << checked.err;
    }
  }
  std::vector<std::string> readBack(const std::string& files) const {
    return json::parse(answerOf("python3 " STEADYTURN_READ_BACK " " + files)).get<std::vector<std::string>>();
  }
  static void expectNoFormula(const std::vector<std::string>& cells) {
    for (const auto& cell : cells) {
      const bool number = !cell.empty() && cell.find_first_not_of("+-.0123456789") == std::string::npos;
      EXPECT_TRUE(number || cell.find_first_of("=+-@\t\r") != 0) << cell.substr(0, 40);
    }
  }
  static bool standsIn(const std::vector<std::string>& texts, const std::string& name) {
    return std::any_of(texts.begin(), texts.end(),
                       [&](const auto& text) { return text.find(name) != std::string::npos; });
  }
  void report(std::vector<std::string> arguments, const std::string& file) const {
    arguments.insert(arguments.begin(), "report");
    arguments.insert(arguments.begin() + 2, {"-o", folder.path(file)});
    const Answer written = run(arguments);
    EXPECT_EQ(written.status, 0) << file << ": " << written.err.substr(0, 400);
    if (!file.ends_with(".pdf")) return;
    EXPECT_THAT(answerOf("qpdf --check '" + folder.path(file) + "' 2>&1"), HasSubstr("No syntax or stream")) << file;
    EXPECT_THAT(folder.read(file), ::testing::Not(AnyOf(HasSubstr("/JavaScript"), HasSubstr("/URI")))) << file;
  }

  static void expectTools(const json& list) {
    std::map<std::string, json> tools;
    for (const json& tool : list.at("tools")) tools[tool.at("tool").get<std::string>()] = tool;
    EXPECT_EQ(tools.size(), names.size());
    for (const auto& [to, name] : names) {
      for (const char* field : {"description", "maker", "serial", "drive"})
        EXPECT_TRUE(tools[markOf(name)].at(field) == name) << to << ", " << field;
    }
  }
  static void expectChecks(const json& list) {
    std::map<std::string, json> checks;
    for (const json& check : list.at("checks")) checks[check.at("tool").get<std::string>()] = check;
    EXPECT_EQ(checks.size(), names.size());
    for (const auto& [to, name] : names) {
      EXPECT_TRUE(checks[markOf(name)].at("by") == name && checks[markOf(name)].at("note") == name) << to;
    }
  }
  void expectOnScreen() const {
    for (const char* kind : {"tool", "check"}) {
      const Answer shown = run({kind, "list"});
      EXPECT_EQ(shown.status, 0);
      EXPECT_EQ(shown.out.find("\xE2\x80\xAE"), std::string::npos) << "a terminal would turn the line around";
    }
  }
  void expectFromShopToShop() const {
    const std::string other = folder.path("other.st");
    EXPECT_EQ(sturn({"init", other}).status, 0);
    for (const std::string kind : {"tools", "references", "checks"}) {
      EXPECT_EQ(run({"export", kind, folder.path(kind + ".csv")}).status, 0);
      expectNoFormula(readBack(folder.path(kind + ".csv")));
      const Answer imported = onShop(other, {"import", kind, folder.path(kind + ".csv")});
      EXPECT_EQ(imported.status, 0) << imported.err.substr(0, 400);
      EXPECT_EQ(onShop(other, {"export", kind, folder.path("again.csv")}).status, 0);
      EXPECT_TRUE(folder.read("again.csv") == folder.read(kind + ".csv")) << kind;
    }
    expectTools(onShop(other, {"tool", "list", "--json"}).json());
  }
  void expectOnCertificates() const {
    std::string xml, csv;  // files
    for (std::size_t number = 1; number <= names.size(); ++number) {
      const auto check = std::to_string(number);
      report({"certificate", check}, check + ".xml");
      report({"certificate", check}, check + ".csv");
      report({"certificate", check}, "certificate.pdf");
      xml += ' ' + folder.path(check + ".xml");
      csv += ' ' + folder.path(check + ".csv");
    }
    const auto inXml = readBack(xml), inCsv = readBack(csv);
    expectNoFormula(inCsv);
    for (const auto& [to, name] : names) EXPECT_TRUE(standsIn(inXml, name) && standsIn(inCsv, name)) << to;
  }
  void expectOnListsAndLabels() const {
    report({"register"}, "register.csv");
    const auto cells = readBack(folder.path("register.csv"));
    expectNoFormula(cells);
    for (const auto& [to, name] : names) EXPECT_TRUE(standsIn(cells, markOf(name))) << to;
    report({"register"}, "register.pdf");
    report({"due"}, "due.pdf");
    report({"labels"}, "labels.pdf");
    for (const auto& [to, name] : names) report({"history", "--", markOf(name)}, "history.pdf");
  }
};

TEST_F(HostileNames, ComeOutAsTheyWentInAndDoNothing) {
  expectOnScreen();
  expectFromShopToShop();
  expectOnCertificates();
  expectOnListsAndLabels();
  // And after all that every tool and check is there, as it was typed.
  expectTools(ask({"tool", "list"}));
  expectChecks(ask({"check", "list"}));
  EXPECT_EQ(run({"verify"}).status, 0);
}

// A zero byte can't be typed on a command line; in a file it is no text, and is refused with its line.
TEST_F(NewShop, TakesNoZeroByteFromAFile) {
  const std::string header = "tool,description,type,class,max,unit\n";
  for (const auto& row :
       {std::string("T\0001,wrench,II,A,100,N.m\n", 25), std::string("T1,wre\0nch,II,A,100,N.m\n", 24),
        std::string("T1,wrench,II,A,1\00000,N.m\n", 24)}) {
    const Answer refused = run({"import", "tools", folder.file("zero.csv", header + row)});
    EXPECT_EQ(refused.status, 65);
    EXPECT_THAT(refused.err, HasSubstr("line 2"));
  }
  EXPECT_EQ(ask({"tool", "list"}).at("tools").size(), 0U);
}

TEST_F(NewShop, TakesNoNameLongerThanItKeeps) {
  const auto add = [&](const std::string& mark, const std::string& description) {
    return run(
        {"tool", "add", mark, "--type=II", "--class=A", "--max=100", "--unit=N.m", "--description", description});
  };
  EXPECT_THAT(add("T1", std::string(10'001, 'x')).err, HasSubstr("10001 bytes"));
  EXPECT_THAT(add(std::string(201, 'x'), "wrench").err, HasSubstr("at most 200 bytes"));
  EXPECT_THAT(add("T1", "red \x1B[31m").err, HasSubstr("control character"));
  EXPECT_THAT(add("T1", "latin \xE9").err, AnyOf(HasSubstr("UTF-8"), HasSubstr("bytes")));
  EXPECT_EQ(ask({"tool", "list"}).at("tools").size(), 0U);
}

}  // namespace
}  // namespace steadyturn::test
