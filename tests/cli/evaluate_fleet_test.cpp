// The contract is app/cli/evaluate/FLEET.md.
#include <gtest/gtest.h>

#include <cmath>

#include "reference_table.h"
#include "run_sturn.h"

namespace steadyturn::test {
namespace {

using nlohmann::json;

const json fleetExample = json::parse(R"(
{"limit_percent": 4, "as_of": "2026-06-01", "interval_days": 365,
 "tools": [
  {"tool": "W08", "tightenings": 2600,
   "checks": [{"date": "2024-01-10", "phase": "as_found", "deviation_percent": 0.9, "tightenings": 0},
              {"date": "2025-01-14", "phase": "as_found", "deviation_percent": 1.2, "tightenings": 1150}]},
  {"tool": "W24", "checks": [{"date": "2026-05-04", "phase": "as_found", "deviation_percent": -0.3}]}]})");

json fleetResult(const json& document) {
  const Answer answer = evaluate("fleet", document.dump());
  EXPECT_EQ(answer.status, 0) << answer.err;
  return answer.json();
}

TEST(EvaluateFleet, SaysThatItAssumesWhereTheRecordIsShort) {
  const json result = fleetResult(fleetExample);
  EXPECT_EQ(result.at("basis"), "assumed");
  EXPECT_NE(result.at("assumption").get<std::string>().find("ISO 6789"), std::string::npos);
  EXPECT_EQ(result.at("exposure"), "days");
  EXPECT_TRUE(result.at("log_likelihood").is_null());
  const json& single = result.at("tools").at(1);
  EXPECT_EQ(single.at("tool"), "W24");
  EXPECT_EQ(single.at("borrowed_percent"), 100);
  EXPECT_EQ(single.at("own").at("state"), "unknown");
  EXPECT_EQ(single.at("due_date"), std::min<std::string>("2027-05-04", single.at("crossing_date")));
  EXPECT_LT(single.at("prediction_interval").at(0).get<double>(), -0.3);
}

// Orthodont as nlme ships it. Ages stand as counts of tightenings, 5,000 a year of age, so that slopes are per year;
// its fit by R is recorded in tests/data/reference/fleet_fit.csv.
TEST(EvaluateFleet, FitsOrthodontAsRDoes) {
  const auto record = steadyturn::testing::ReferenceTable::load("fleet_record.csv");
  json document{{"limit_percent", 100}, {"as_of", "2026-01-01"}, {"interval_days", 365}, {"exposure", "tightenings"}};
  std::string last;
  for (std::size_t row = 0; row < record.rows(); ++row) {
    if (record.text(row, "set") != "orthodont") continue;
    if (record.text(row, "tool") != last) {
      last = record.text(row, "tool");
      document["tools"].push_back({{"tool", last}, {"checks", json::array()}});
    }
    const double age = record.figure(row, "x").value;
    document["tools"].back()["checks"].push_back({{"date", std::to_string(2000 + static_cast<int>(age)) + "-01-01"},
                                                  {"phase", "as_found"},
                                                  {"deviation_percent", record.figure(row, "y").value},
                                                  {"tightenings", 5000 * age}});
  }
  const json result = fleetResult(document);
  const auto fit = steadyturn::testing::ReferenceTable::load("fleet_fit.csv");
  std::size_t row = 0;
  while (fit.text(row, "set") != "orthodont") ++row;
  const auto expect = [&](double actual, const char* column) {
    const double expected = fit.figure(row, column).value;
    EXPECT_NEAR(actual, expected, 0.5e-6 * std::abs(expected)) << column;
  };
  EXPECT_EQ(result.at("basis"), "estimated");
  EXPECT_TRUE(result.at("assumption").is_null());
  EXPECT_EQ(result.at("tools_with_drift"), 27);
  const auto squared = [&](const char* field) { return std::pow(result.at(field).get<double>(), 2); };
  expect(squared("slope_standard_deviation"), "slope_variance");
  expect(squared("residual_standard_deviation"), "residual_variance");
  expect(result.at("log_likelihood"), "log_likelihood");
  expect(result.at("slope_percent"), "slope");
  expect(result.at("slope_standard_error"), "kr_se");
  expect(result.at("slope_degrees_of_freedom"), "kr_df");
}

TEST(EvaluateFleet, NamesEveryFieldThatIsWrong) {
  json bad = fleetExample;
  bad["tools"][0]["checks"][1]["tightenings"] = -3;
  bad["tools"][1]["tool"] = "W08";
  bad["exposure"] = "weeks";
  bad["colour"] = 1;
  const Answer answer = evaluate("fleet", bad.dump());
  EXPECT_EQ(answer.status, 65);
  for (const char* field : {"exposure", "colour"}) EXPECT_NE(answer.err.find(field), std::string::npos) << answer.err;
  bad.erase("exposure");
  bad.erase("colour");
  const Answer deeper = evaluate("fleet", bad.dump());
  EXPECT_EQ(deeper.status, 65);
  for (const char* field : {"tools[0].checks[1].tightenings", "tools[1].tool"}) {
    EXPECT_NE(deeper.err.find(field), std::string::npos) << deeper.err;
  }
  json uncounted = fleetExample;
  uncounted["exposure"] = "tightenings";
  EXPECT_EQ(evaluate("fleet", uncounted.dump()).status, 65);
}

}  // namespace
}  // namespace steadyturn::test
