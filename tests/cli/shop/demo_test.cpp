#include <gmock/gmock.h>

#include <algorithm>

#include "temp_shop.h"

namespace steadyturn::test {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;
using ::testing::StartsWith;

std::string idWith(const json& rows, const char* field, const char* value) {
  const auto row = std::find_if(rows.begin(), rows.end(), [&](const json& one) { return one.at(field) == value; });
  return row == rows.end() ? "" : row->at("tool").get<std::string>();
}

TEST_F(DemoShop, ListsWhatIsDueEarliestFirst) {
  const json due = ask({"due", "--within", "60"});
  ASSERT_GE(due.at("tools").size(), 2u);
  std::string before;
  for (const auto& row : due.at("tools")) {
    const std::string date = row.at("due_date").is_null() ? "" : row.at("due_date").get<std::string>();
    EXPECT_LE(before, date);
    EXPECT_LE(date, due.at("until").get<std::string>());
    before = date;
  }
  EXPECT_THAT(run({"due"}).out, HasSubstr("overdue"));
}

// A tool's drift is the fit of its checks up to that day: the same list through `evaluate drift`.
TEST_F(DemoShop, DriftsAsItsChecksSay) {
  const std::string tool = idWith(ask({"tool", "list"}).at("tools"), "state", "leaving");
  const auto facts = ask({"tool", "show", tool});
  const auto drift = ask({"drift", tool, "--as-of", "2026-06-01"});
  EXPECT_EQ(drift.size(), 4u);
  const auto& series = drift.at("series").at(0);
  nlohmann::json document{
      {"limit_percent", facts.at("limit_percent")},
      {"confidence", 0.95},
      {"as_of", "2026-06-01"},
      {"interval_days", facts.at("interval_days").is_null() ? 365 : facts.at("interval_days").get<int>()},
      {"checks", nlohmann::json::array()}};
  const auto checks = ask({"check", "list", "--tool", tool}).at("checks");
  for (const auto& check : checks) {
    if (check.at("date").get<std::string>() > "2026-06-01") continue;  // nobody knew it on that day
    for (const auto& point : check.at("points")) {
      if (point.at("target") != series.at("target") || !check.at("corrected_by").is_null()) continue;
      document["checks"].push_back({{"date", check.at("date")},
                                    {"phase", check.at("phase")},
                                    {"deviation_percent", point.at("mean_deviation_percent")}});
    }
  }
  const Answer fitted = evaluate("drift", document.dump());
  ASSERT_EQ(fitted.status, 0) << fitted.err;
  const auto fit = fitted.json();
  for (const auto& field : fit.items()) EXPECT_EQ(series.at(field.key()), field.value()) << field.key();
}

TEST_F(DemoShop, ChoosesAWrenchForAPlasticHousingAndSaysWhyNotTheOthers) {
  const auto fasteners = ask({"fastener", "find", "filter", "housing"}).at("fasteners");
  const auto plastic = std::find_if(fasteners.begin(), fasteners.end(), [](const auto& one) {
    return one.at("part_material") == "plastic" && !one.at("part_limit").is_null();
  });
  ASSERT_NE(plastic, fasteners.end());
  const auto choice = ask({"choose", plastic->at("fastener")});
  EXPECT_EQ(choice.size(), 4u);
  ASSERT_GE(choice.at("options").size(), 1u);
  double before = 1;
  for (const auto& option : choice.at("options")) {
    EXPECT_EQ(option.size(), 6u);
    EXPECT_NEAR(option.at("probability_within").get<double>() + option.at("probability_below").get<double>() +
                    option.at("probability_above").get<double>(),
                1, 1e-9);
    EXPECT_LE(option.at("probability_over_part_limit"), 0.001);  // the contract's ceiling
    EXPECT_LE(option.at("probability_within").get<double>(), before);
    before = option.at("probability_within").get<double>();
  }
  EXPECT_EQ(choice.at("options").size() + choice.at("refused").size(), ask({"tool", "list"}).at("tools").size());
  for (const auto& refused : choice.at("refused")) EXPECT_FALSE(refused.at("reason").get<std::string>().empty());
}

// Statics (common practice): with L 400 and E 50 straight on, 8/9 of the setting gives the same torque.
TEST_F(DemoShop, SetsLowerWithAnAdapter) {
  const auto plain = ask({"choose", "MB-02"}).at("options").at(0);
  const auto longer = ask({"choose", "MB-02", "--wrench-length", "400", "--offset", "50"}).at("options").at(0);
  EXPECT_LT(longer.at("setting").at("value"), plain.at("setting").at("value"));
  EXPECT_EQ(run({"choose", "MB-02", "--wrench-length", "400"}).status, 64);
  EXPECT_EQ(run({"choose", "MB-02", "--wrench-length", "4OO", "--offset", "50"}).status, 65);
  EXPECT_EQ(run({"choose", "nothing"}).status, 65);
}

TEST_F(DemoShop, RecallsWhatAFailedToolTightened) {
  const std::string tool = idWith(ask({"tool", "list"}).at("tools"), "standing", "failed");
  const auto recall = ask({"recall", tool});
  ASSERT_GE(recall.at("tightenings").size(), 1u);
  for (const auto& one : recall.at("tightenings")) {
    EXPECT_GE(one.at("date"), recall.at("last_good"));
    EXPECT_LE(one.at("date"), recall.at("found_bad"));
    for (const char* field : {"job", "fastener", "setting", "deviation_percent", "probability_below",
                              "probability_above", "probability_over_part_limit"}) {
      EXPECT_TRUE(one.contains(field)) << field;
    }
    for (const char* field :
         {"deviation_percent", "probability_below", "probability_above", "probability_over_part_limit"}) {
      EXPECT_TRUE(one.at("worst_case").contains(field)) << field;
    }
  }
  EXPECT_THAT(run({"recall", tool}).out, HasSubstr("Worst first"));
}

TEST_F(DemoShop, WritesCertificatesAndHistories) {
  const struct {
    std::vector<std::string> what;
    const char* ending;
    const char* magic;
  } all[]{{{"certificate", "1"}, ".pdf", "%PDF-"},    {{"certificate", "1"}, ".csv", ""},
          {{"certificate", "1"}, ".xml", "<?xml"},    {{"history", "W07"}, ".pdf", "%PDF-"},
          {{"history", "W07"}, ".csv", ""},           {{"history", "W07"}, ".svg", "<?xml"},
          {{"history", "W07"}, ".PNG", "\x89PNG\r\n"}};
  for (const auto& one : all) {
    const std::string name = one.what.front() + one.ending;
    std::vector<std::string> arguments{"report"};
    arguments.insert(arguments.end(), one.what.begin(), one.what.end());
    arguments.insert(arguments.end(), {"-o", folder->path(name)});
    const Answer answer = run(arguments);
    EXPECT_EQ(answer.status, 0) << answer.err;
    EXPECT_EQ(answer.err, "");
    EXPECT_THAT(folder->read(name), StartsWith(one.magic));
    EXPECT_GT(folder->read(name).size(), 500u);
  }
  EXPECT_EQ(run({"report", "certificate", "1", "-o", folder->path("c.doc")}).status, 64);
  EXPECT_EQ(run({"report", "certificate", "1", "-o", folder->path("no/such/c.pdf")}).status, 73);
  EXPECT_EQ(run({"report", "certificate", "99999", "-o", folder->path("c.pdf")}).status, 65);
  EXPECT_EQ(run({"report", "history", "W99", "-o", folder->path("h.svg")}).status, 65);
}

// Export → init → import → export gives the same bytes (the contract's promise).
TEST_F(DemoShop, GoesOutAndInAgainWithTheSameBytes) {
  const TempFolder other;
  const std::string copy = other.path("copy.st");
  ASSERT_EQ(sturn({"init", copy}).status, 0);
  for (const char* kind : {"tools", "references", "fasteners", "checks", "tightenings"}) {
    const std::string file = other.path(std::string(kind) + ".csv");
    ASSERT_EQ(run({"export", kind, file}).status, 0);
    const std::string written = other.read(std::string(kind) + ".csv");
    EXPECT_EQ(run({"export", kind}).out, written);
    const Answer taken = onShop(copy, {"import", kind, file, "--json"});
    ASSERT_EQ(taken.status, 0) << taken.err;
    EXPECT_GT(taken.json().at("records"), 0);
    EXPECT_EQ(onShop(copy, {"export", kind}).out, written);
    EXPECT_EQ(onShop(copy, {"import", kind, file}).status, 65) << "taken in twice";
  }
}

TEST_F(DemoShop, ExportLeavesNoHalfFile) {
  const TempFolder other;
  EXPECT_EQ(run({"export", "tools", "/dev/full"}).status, 73);
  EXPECT_EQ(run({"export", "tools", other.path("no/such.csv")}).status, 73);
  EXPECT_EQ(run({"export", "tools", other.path(".")}).status, 73);
  EXPECT_EQ(other.entries(), 0u);
  Setting full;
  full.outputFile = "/dev/full";
  EXPECT_EQ(sturn({"--shop", folder->path("demo.st"), "export", "checks"}, full).status, 73);
}

TEST_F(DemoShop, ImportRefusesByLineAndColumnAndTakesNothing) {
  const TempFolder other;
  const std::string before = run({"export", "tools"}).out;
  const struct {
    const char* csv;
    int status;
    const char* says;
  } bad[]{{"tool,type,class,max,unit\nA,II,A,100,N.m\nB,II,A,1O.5,N.m\n", 65, R"(line 3, max: found "1O.5")"},
          {"tool,type,class,max,unit,colour\n", 65, "colour"},
          {"tool,type,class,max,unit\nA,II,A\n", 65, "line 2"},
          {"tool,type,class,max,unit\nA,II,A,100,parsec\n", 65, R"(unit: found "parsec")"},
          {"", 65, "accepted"},
          {"tool,type,class,max,unit\n\xE9,II,A,100,N.m\n", 65, "UTF-8"}};
  for (const auto& one : bad) {
    const Answer answer = run({"import", "tools", other.file("in.csv", one.csv)});
    EXPECT_EQ(answer.status, one.status) << one.csv;
    EXPECT_THAT(answer.err, HasSubstr(one.says));
  }
  EXPECT_EQ(run({"import", "tools", other.path("missing.csv")}).status, 66);
  EXPECT_EQ(run({"import", "tools", other.path(".")}).status, 66);
  EXPECT_EQ(run({"import", "spoons", other.file("in.csv", "")}).status, 64);
  EXPECT_EQ(run({"export", "tools"}).out, before);
}

TEST_F(DemoShop, TablesAreAligned) {
  const std::string out = run({"reference", "list"}).out;
  // Headings, a rule and one line for each of the three standards; columns begin where the rule's dashes begin.
  ASSERT_EQ(std::count(out.begin(), out.end(), '\n'), 5);
  const std::size_t rule = out.find('\n') + 1;
  const std::size_t first = out.find('\n', rule) + 1;
  const std::size_t gap = out.find("  ", rule) - rule;
  EXPECT_EQ(out.substr(first + gap, 2), "  ");
}

}  // namespace
}  // namespace steadyturn::test
