#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "run_sturn.h"

namespace steadyturn::test {
namespace {

using nlohmann::json;

// The contract's own example.
const json checkExample = json::parse(R"(
{"tool": {"type": "II", "class": "A", "max": {"value": 100, "unit": "N.m"}, "resolution": {"value": 1, "unit": "N.m"}},
 "limit_percent": 4,
 "reference": {"expanded_uncertainty_percent": 0.4, "coverage_factor": 2, "error_percent": 0},
 "variation_percent": {"reproducibility": 0.3, "drive": 0.2, "interface": 0.2, "loading_point": 0.3},
 "rule": "simple",
 "points": [{"target": {"value": 20, "unit": "N.m"}, "readings": {"unit": "N.m", "values": [19.8, 20.1, 20.0, 19.9, 20.2]}}]})");

json checkResult(const json& document) {
  const Answer answer = evaluate("check", document.dump());
  EXPECT_EQ(answer.status, 0) << answer.err;
  return answer.json();
}

TEST(EvaluateCheck, HasEveryFieldOfTheContract) {
  const json result = checkResult(checkExample);
  for (const char* field : {"verdict", "limit_percent", "not_evaluated", "notes", "points"}) {
    EXPECT_TRUE(result.contains(field)) << field;
  }
  const json& point = result.at("points").at(0);
  for (const char* field : {"deviations_percent", "mean_deviation_percent", "repeatability_percent",
                            "standard_uncertainty_percent", "coverage_factor", "expanded_uncertainty_percent",
                            "interval_percent", "within_limit", "conformity_probability", "verdict", "budget"}) {
    EXPECT_TRUE(point.contains(field)) << field;
  }
  for (const json& entry : point.at("budget")) {
    EXPECT_TRUE(entry.at("source").is_string());
    EXPECT_TRUE(entry.at("standard_uncertainty_percent").is_number());
  }
  EXPECT_EQ(result.at("verdict"), "pass");
  // The standard asks for 20 %, 60 % and 100 % of the maximum; two of them are missing here (ISO 6789-1, from
  // memory).
  EXPECT_EQ(result.at("notes").size(), 2u) << result.at("notes");
}

double squared(double value) { return value * value; }

// Written out a second time from ISO 6789-2 (from memory) and the contract: s of the deviations (n − 1), spans and
// the graduation as rectangles of full width, W′ = |mean| + 2 w + |b_e|.
TEST(EvaluateCheck, AgreesWithTheBudgetWrittenOut) {
  const std::vector<double> readings{101.2, 100.8, 101.0, 101.4, 100.9};
  json document = checkExample;
  document["reference"] = {{"expanded_uncertainty_percent", 0.5}, {"coverage_factor", 2}, {"error_percent", 0.1}};
  document["variation_percent"] = {
      {"reproducibility", 0.4}, {"drive", 0.3}, {"interface", 0.2}, {"loading_point", 0.6}};
  document["points"] = {
      {{"target", {{"value", 100}, {"unit", "Nm"}}}, {"readings", {{"unit", "N\xC2\xB7m"}, {"values", readings}}}}};
  const json point = checkResult(document).at("points").at(0);

  std::vector<double> deviations;
  for (const double reading : readings) deviations.push_back((100 / reading - 1) * 100);
  const double mean = std::accumulate(deviations.begin(), deviations.end(), 0.0) / 5;
  double squares = 0;
  for (const double deviation : deviations) squares += squared(deviation - mean);
  const double s = std::sqrt(squares / 4);
  const double spans = squared(0.4) + squared(0.3) + squared(0.2) + squared(0.6);
  const double w = std::sqrt(squared(0.25) + squared(1.0) / 12 + spans / 12 + squared(s) / 5);

  EXPECT_NEAR(mean, -1.048433, 0.5e-6);  // worked in the project's notes
  EXPECT_NEAR(point.at("mean_deviation_percent").get<double>(), mean, 1e-12);
  EXPECT_NEAR(point.at("repeatability_percent").get<double>(), s, 1e-12);
  EXPECT_NEAR(point.at("standard_uncertainty_percent").get<double>(), w, 1e-12);
  EXPECT_NEAR(point.at("expanded_uncertainty_percent").get<double>(), 2 * w, 1e-12);
  EXPECT_NEAR(point.at("interval_percent").get<double>(), std::abs(mean) + 2 * w + 0.1, 1e-12);
  EXPECT_EQ(point.at("coverage_factor"), 2);
}

// ISO 6789-1 (from memory): Type II class A ± 4 % above 10 N·m, ± 6 % up to 10 N·m.
TEST(EvaluateCheck, TakesTheLimitFromTheKindOfTool) {
  json document = checkExample;
  document.erase("limit_percent");
  EXPECT_EQ(checkResult(document).at("limit_percent"), 4);
  document["tool"]["max"] = {{"value", 10}, {"unit", "N.m"}};
  document["points"][0]["target"]["value"] = 10;
  document["points"][0]["readings"]["values"] = {10, 10, 10, 10, 10};
  EXPECT_EQ(checkResult(document).at("limit_percent"), 6);
}

TEST(EvaluateCheck, ListsWhatWasNotEvaluated) {
  json document = checkExample;
  document["variation_percent"].erase("drive");
  EXPECT_EQ(checkResult(document).at("not_evaluated"), json({"drive"}));
  document.erase("variation_percent");
  EXPECT_EQ(checkResult(document).at("not_evaluated"),
            json({"reproducibility", "drive", "interface", "loading_point"}));
}

// Four of five readings of 100 N·m at 100, one at 105: −4.76 % leaves ± 4 %.
TEST(EvaluateCheck, FailsBySingleReading) {
  json document = checkExample;
  document["points"][0]["readings"]["values"] = {20, 20, 20, 20, 21};
  EXPECT_EQ(checkResult(document).at("verdict"), "fail");
  document["rule"] = "guarded";
  EXPECT_EQ(checkResult(document).at("verdict"), "conditional fail");
}

// A reading in another unit is the same reading: 20 N·m is 2000 cN·m.
TEST(EvaluateCheck, ComparesReadingsInAnotherUnit) {
  json document = checkExample;
  document["points"][0]["readings"] = json::parse(R"({"unit": "cNm", "values": [1980, 2010, 2000, 1990, 2020]})");
  const json direct = checkResult(checkExample).at("points").at(0);
  const json converted = checkResult(document).at("points").at(0);
  for (std::size_t i = 0; i < 5; ++i) {
    EXPECT_NEAR(converted.at("deviations_percent")[i].get<double>(), direct.at("deviations_percent")[i].get<double>(),
                1e-12);
  }
}

}  // namespace
}  // namespace steadyturn::test
