#include <gmock/gmock.h>

#include "temp_shop.h"

namespace steadyturn::test {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;

constexpr const char* good = "target,reading,unit\n20,19.8,N.m\n20,20.1,Nm\n60,60.3,N\xC2\xB7m\n60,59.9,N.m\n";

TEST_F(NewShop, KeepsAToolAsItWasAdded) {
  addToolAndReference();
  const json tool = json::parse(run({"tool", "list", "--json"}).out).at("tools").at(0);
  EXPECT_EQ(tool.at("tool"), "T1");
  EXPECT_EQ(tool.at("type"), "II");
  EXPECT_EQ(tool.at("class"), "A");
  EXPECT_EQ(tool.at("min"), 20);
  EXPECT_EQ(tool.at("max"), 100);
  EXPECT_EQ(tool.at("unit"), "N.m");
  EXPECT_EQ(tool.at("resolution"), 1);
  EXPECT_EQ(tool.at("limit_percent"), 4);  // ISO 6789-1, II A above 10 N·m (from memory)
  EXPECT_EQ(tool.at("standing"), "never checked");
}

TEST_F(NewShop, RefusesAToolThatCannotBe) {
  addToolAndReference();
  const auto add = [&](std::vector<std::string> more) {
    std::vector<std::string> arguments{"tool", "add", "T2", "--type", "II", "--class", "A"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    return run(arguments);
  };
  EXPECT_EQ(add({"--min", "200", "--max", "100", "--unit", "N.m"}).status, 65);
  EXPECT_EQ(add({"--max", "1O.5", "--unit", "N.m"}).status, 65);
  EXPECT_EQ(add({"--max", "-100", "--unit", "N.m"}).status, 65);
  EXPECT_EQ(add({"--max", "nan", "--unit", "N.m"}).status, 65);
  EXPECT_THAT(add({"--max", "100", "--unit", "furlong"}).err, HasSubstr(R"(unit: found "furlong"; accepted: N.m)"));
  EXPECT_EQ(add({"--max", "100"}).status, 64);
  EXPECT_EQ(run({"tool", "add", "T1", "--type", "II", "--class", "A", "--max", "9", "--unit", "Nm"}).status, 65);
  EXPECT_EQ(ask({"tool", "list"}).at("tools").size(), 1u);
}

// The same readings give the same figures through `evaluate check`, which is held against outside figures elsewhere.
TEST_F(NewShop, RecordsACheckWithTheFiguresOfItsEvaluation) {
  addToolAndReference();
  const Answer recorded = record("2026-03-14", "as_found", good);
  ASSERT_EQ(recorded.status, 0) << recorded.err;
  EXPECT_THAT(recorded.out, HasSubstr("pass"));

  const json stored = ask({"check", "show", "1"});
  EXPECT_EQ(stored.at("date"), "2026-03-14");
  EXPECT_EQ(stored.at("phase"), "as_found");
  EXPECT_EQ(stored.at("points").size(), 2u);
  EXPECT_EQ(stored.at("points")[0].at("readings"), json::parse(R"({"unit": "N.m", "values": [19.8, 20.1]})"));

  const json evaluated = evaluate("check", R"(
      {"tool": {"type": "II", "class": "A", "max": {"value": 100, "unit": "N.m"}, "resolution": {"value": 1, "unit": "N.m"}},
       "reference": {"expanded_uncertainty_percent": 0.4},
       "points": [{"target": {"value": 20, "unit": "N.m"}, "readings": {"unit": "N.m", "values": [19.8, 20.1]}},
                  {"target": {"value": 60, "unit": "N.m"}, "readings": {"unit": "N.m", "values": [60.3, 59.9]}}]})")
                             .json();
  for (std::size_t i = 0; i < 2; ++i) {
    for (const char* figure : {"mean_deviation_percent", "repeatability_percent", "standard_uncertainty_percent",
                               "interval_percent", "conformity_probability", "verdict"}) {
      EXPECT_EQ(stored.at("points")[i].at(figure), evaluated.at("points")[i].at(figure)) << figure;
    }
  }
}

TEST_F(NewShop, ReadsDecimalCommasOnlyWhenTold) {
  addToolAndReference();
  const std::string file = folder.file("comma.csv", "target;reading;unit\n20;19,8;N.m\n");
  const std::vector<std::string> arguments{"check",      "record",  "--tool",   "T1",     "--reference",
                                           "R1",         "--phase", "as_found", "--date", "2026-03-14",
                                           "--readings", file,      "--json"};
  EXPECT_EQ(run(arguments).status, 65);
  auto told = arguments;
  told.insert(told.end(), {"--decimal", "comma"});
  const Answer answer = run(told);
  ASSERT_EQ(answer.status, 0) << answer.err;
  EXPECT_EQ(answer.json().at("points")[0].at("readings").at("values"), json({19.8}));
}

struct BadReadings {
  const char* csv;
  const char* says;
};

TEST_F(NewShop, RefusesBadReadingsByLineAndColumnAndKeepsNothing) {
  addToolAndReference();
  const BadReadings bad[]{
      {"", "accepted"},
      {"target,reading,unit\n", "reading"},
      {"target,reading,unit\n20,2O.1,N.m\n", R"(line 2, reading: found "2O.1")"},
      {"target,reading,unit\n20,20,N.m\n20,-3,N.m\n", R"(line 3, reading: found "-3")"},
      {"target,reading,unit\n20,nan,N.m\n", R"(line 2, reading: found "nan")"},
      {"target,reading,unit\n20,20,Nx\n", R"(line 2, unit: found "Nx"; accepted: N.m)"},
      {"target,reading,unit\n20,20,N.m\n20,20,lbf.ft\n", R"(line 3, unit: found "lbf.ft"; accepted: N.m)"},
      {"target,reading,unit\n20,20\n", "line 2"},
      {"target,reading,unit,colour\n20,20,N.m,red\n", R"(line 1, colour: found "an unknown column")"},
      {"target,reading\n20,20\n", "line 1, unit"},
      {"target,reading,unit\n200,200,N.m\n", "range of T1"},
      {"target,reading,unit\n20,20,N\xB7m\n", "UTF-8"},
      {"target,reading,unit\n20,0,N.m\n", "reading"},
  };
  for (const BadReadings& one : bad) {
    const Answer answer = record("2026-03-14", "as_found", one.csv);
    EXPECT_EQ(answer.status, 65) << one.csv;
    EXPECT_THAT(answer.err, HasSubstr(one.says));
  }
  EXPECT_EQ(record("2026-02-29", "as_found", good).status, 65);
  EXPECT_EQ(record("2026-03-14", "found", good).status, 65);
  EXPECT_EQ(ask({"check", "list"}).at("checks").size(), 0u);
}

TEST_F(NewShop, RefusesALineWithoutEnd) {
  addToolAndReference();
  const Answer answer = record("2026-03-14", "as_found", "target,reading,unit\n" + std::string(8'000'000, '1'));
  EXPECT_EQ(answer.status, 65);
  EXPECT_LT(answer.err.size(), 1000u);
}

TEST_F(NewShop, RefusesAMissingFileToolOrReference) {
  addToolAndReference();
  const auto attempt = [&](const char* tool, const char* reference, const std::string& file) {
    return run({"check", "record", "--tool", tool, "--reference", reference, "--phase", "as_found", "--date",
                "2026-03-14", "--readings", file});
  };
  const std::string file = folder.file("readings.csv", good);
  EXPECT_EQ(attempt("T1", "R1", folder.path("missing.csv")).status, 66);
  EXPECT_EQ(attempt("T1", "R1", folder.path(".")).status, 66);
  EXPECT_EQ(attempt("T9", "R1", file).status, 65);
  EXPECT_EQ(attempt("T1", "R9", file).status, 65);
}

TEST_F(NewShop, KeepsBothSidesOfACorrection) {
  addToolAndReference();
  ASSERT_EQ(record("2026-03-14", "as_found", good).status, 0);
  EXPECT_EQ(record("2026-03-14", "as_found", good).status, 65);  // there is one already
  const std::string file = folder.file("corrected.csv", "target,reading,unit\n20,20.5,N.m\n");
  const Answer corrected = run({"check", "correct", "1", "--reason", "misread", "--readings", file, "--json"});
  ASSERT_EQ(corrected.status, 0) << corrected.err;
  EXPECT_EQ(corrected.json().at("corrects"), 1);
  EXPECT_EQ(corrected.json().at("correction_reason"), "misread");
  EXPECT_EQ(corrected.json().at("date"), "2026-03-14");
  EXPECT_EQ(ask({"check", "show", "1"}).at("corrected_by"), 2);
  EXPECT_EQ(ask({"check", "list", "--tool", "T1"}).at("checks").size(), 2u);
}

TEST_F(NewShop, HoldsReleasesAndRetiresATool) {
  addToolAndReference();
  ASSERT_EQ(record("2026-03-14", "as_found", good).status, 0);
  EXPECT_EQ(run({"tool", "hold", "T1", "--reason", "fell"}).status, 0);
  EXPECT_EQ(ask({"tool", "show", "T1"}).at("status_reason"), "fell");
  EXPECT_EQ(run({"tool", "release", "T1"}).status, 0);
  EXPECT_EQ(run({"tool", "retire", "T1"}).status, 0);
  EXPECT_EQ(ask({"tool", "show", "T1"}).at("status"), "retired");
  EXPECT_EQ(run({"tool", "hold", "T1"}).status, 65);
  EXPECT_EQ(run({"tool", "hold", "T9"}).status, 65);
}

}  // namespace
}  // namespace steadyturn::test
