#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "run_sturn.h"

namespace steadyturn::test {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;
using ::testing::StartsWith;

const json check = json::parse(R"(
{"tool": {"type": "II", "class": "A", "max": {"value": 100, "unit": "N.m"}},
 "reference": {"expanded_uncertainty_percent": 0.4},
 "points": [{"target": {"value": 20, "unit": "N.m"}, "readings": {"unit": "N.m", "values": [19.8, 20.1]}}]})");

void expectRefused(const std::string& what, const std::string& document, const std::string& line) {
  const Answer answer = evaluate(what, document);
  EXPECT_EQ(answer.status, 65) << document;
  EXPECT_EQ(answer.out, "");
  EXPECT_THAT(answer.err, StartsWith("sturn: " + line));
}

json with(const std::string& pointer, const json& value) {
  json document = check;
  document[json::json_pointer(pointer)] = value;
  return document;
}

TEST(BadDocuments, AreNamedByTheirPath) {
  const struct {
    std::string pointer;
    json value;
    std::string line;
  } cases[]{
      {"/points/0/target/unit", "Nx", R"(points[0].target.unit: found "Nx"; accepted: N.m, cN.m)"},
      {"/points/0/readings/unit", 7, R"(points[0].readings.unit: found "7")"},
      {"/points/0/readings/values/1", "20.1", R"(points[0].readings.values[1]: found "20.1"; accepted: a number)"},
      {"/points/0/readings/values/1", nullptr, R"(points[0].readings.values[1]: found "null")"},
      {"/points/0/readings/values/1", -20, "points[0].readings.values[1]: found \"-20\""},
      {"/points/0/readings/values/1", 0, "points[0].readings.values[1]: found \"0\""},
      {"/points/0/readings/values", json::array(), "points[0].readings.values: found nothing"},
      {"/points/0/target/value", -1, R"(points[0].target.value: found "-1"; accepted: a torque of 0 or more)"},
      {"/points/0/target/value", true, R"(points[0].target.value: found "true")"},
      {"/points/0/target/frob", 1, R"(points[0].target.frob: found "an unknown field")"},
      {"/points/0", 20, R"(points[0]: found "20"; accepted: an object)"},
      {"/points", json::object(), "points: found \"an object\"; accepted: an array"},
      {"/points", json::array(), "points: found nothing"},
      {"/tool/type", "III", R"(tool.type: found "III"; accepted: I or II)"},
      {"/tool/type", 2, R"(tool.type: found "2"; accepted: a text)"},
      {"/tool/class", "H", R"(tool.class: found "H")"},
      {"/tool/max", 100, R"(tool.max: found "100"; accepted: an object)"},
      {"/tool/max", nullptr, "tool.max: found nothing"},
      {"/rule", "strict", R"(rule: found "strict"; accepted: simple)"},
      {"/limit_percent", 0, R"(limit_percent: found "0")"},
      {"/limit_percent", "4", R"(limit_percent: found "4"; accepted: a number)"},
      {"/reference/coverage_factor", 0, R"(reference.coverage_factor: found "0")"},
      {"/reference", json::object(), "reference.expanded_uncertainty_percent: found nothing"},
      {"/Limit_percent", 4, R"(Limit_percent: found "an unknown field")"},
  };
  for (const auto& one : cases) expectRefused("check", with(one.pointer, one.value).dump(), one.line);
}

TEST(BadDocuments, TellAllProblemsAtOnce) {
  json document = with("/points/0/target/unit", "Nx");
  document["tool"]["type"] = "IV";
  document["extra"] = 1;
  const Answer answer = evaluate("check", document.dump());
  EXPECT_EQ(answer.status, 65);
  for (const char* path : {"points[0].target.unit", "tool.type", "extra"}) EXPECT_THAT(answer.err, HasSubstr(path));
  EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 3) << answer.err;
}

TEST(BadDocuments, OfDriftAndDelivery) {
  expectRefused("drift", R"({"limit_percent": 4, "as_of": "2026-13-01", "interval_days": 365, "checks":
                            [{"date": "2025-01-01", "phase": "as_found", "deviation_percent": 1}]})",
                R"(as_of: found "2026-13-01")");
  expectRefused("drift", R"({"limit_percent": 4, "as_of": "2026-01-01", "interval_days": 36.5, "checks":
                            [{"date": "2025-01-01", "phase": "as_found", "deviation_percent": 1}]})",
                R"(interval_days: found "36.5"; accepted: a whole number)");
  expectRefused("drift", R"({"limit_percent": 4, "as_of": "2026-01-01", "interval_days": 365, "checks":
                            [{"date": "2025-01-01", "phase": "found", "deviation_percent": 1}]})",
                R"(checks[0].phase: found "found"; accepted: as_found)");
  expectRefused("delivery", R"({"setting": {"value": 18, "unit": "N.m"}})", "window: found nothing");
}

TEST(BadDocuments, OfAWindowUpsideDown) {
  expectRefused("delivery", R"({"setting": {"value": 18, "unit": "N.m"},
      "window": {"low": {"value": 20, "unit": "N.m"}, "high": {"value": 16, "unit": "N.m"}},
      "deviation": {"percent": 1.2, "standard_uncertainty_percent": 0.8}, "pull": {"standard_deviation_percent": 0.5},
      "resolution": {"value": 0.5, "unit": "N.m"}, "reference_standard_uncertainty_percent": 0.25})",
                "window");
}

TEST(BadDocuments, SayWhereTheSyntaxBreaks) {
  expectRefused("check", "{\"tool\":\n  nope}", "standard input, line 2, column 3: found \"n");
  expectRefused("check", "{\"a\": NaN}", "standard input, line 1, column 7: found \"NaN\"");
  expectRefused("check", "{\"a\": 1", "standard input, line 1, column 8: found \"the end of the text\"");
  expectRefused("check", "{} {}", "standard input, line 1, column 4");
  expectRefused("check", "{\"a\": 1e999}", "standard input, line 1, column 7: found \"1e999\"");
  expectRefused("check", "", "standard input: found nothing; accepted: JSON");
  expectRefused("check", " \n ", "standard input: found nothing; accepted: JSON");
  expectRefused("check", "[]", "standard input: found \"an array\"; accepted: an object");
}

TEST(BadDocuments, RefuseBytesThatAreNotUtf8) {
  expectRefused("check", "{\"tool\": \"caf\xE9\"}", "standard input, line 1, column 14: found");
}

TEST(BadDocuments, RefuseANameThatStandsTwice) {
  expectRefused("joint", R"({"thread": "M8", "thread": "M10"})",
                R"(standard input: found "thread"; accepted: each name once)");
}

TEST(BadDocuments, RefuseDeepNestingAndTooMuchOfIt) {
  expectRefused("check", std::string(100'000, '['), "standard input: found \"more than 64 levels");
  expectRefused("check", std::string((std::size_t{64} << 20) + 1, ' '), "standard input: found \"more than 64 MiB\"");
}

}  // namespace
}  // namespace steadyturn::test
