#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "run_sturn.h"

namespace steadyturn::test {
namespace {

using nlohmann::json;

// The contract's own example.
const json driftExample = json::parse(R"(
{"limit_percent": 4, "confidence": 0.95, "as_of": "2026-06-01", "interval_days": 365,
 "checks": [{"date": "2023-01-16", "phase": "as_found", "deviation_percent": 0.2},
            {"date": "2024-01-10", "phase": "as_found", "deviation_percent": 1.1},
            {"date": "2024-01-10", "phase": "as_left",  "deviation_percent": 0.1},
            {"date": "2025-01-14", "phase": "as_found", "deviation_percent": 0.9}]})");

json driftResult(const json& document) {
  const Answer answer = evaluate("drift", document.dump());
  EXPECT_EQ(answer.status, 0) << answer.err;
  return answer.json();
}

// By hand: two segments of two checks each, 359 and 370 days apart, rising by 0.9 and 0.8. With two points a segment,
// slope = (359 · 0.9 + 370 · 0.8) / (359² + 370²) a day; the residual sum of squares is half of (Δ − slope · days)²
// each.
TEST(EvaluateDrift, AgreesWithTheExampleWorkedByHand) {
  const json result = driftResult(driftExample);
  const double slope = (359 * 0.9 + 370 * 0.8) / (359. * 359 + 370. * 370);
  const double first = 0.9 - slope * 359, second = 0.8 - slope * 370;
  EXPECT_NEAR(result.at("slope_percent_per_year").get<double>(), slope * 365.25, 1e-12);
  EXPECT_NEAR(result.at("residual_standard_deviation").get<double>(),
              std::sqrt((first * first + second * second) / 2), 1e-12);
  EXPECT_EQ(result.at("degrees_of_freedom"), 1);
  EXPECT_EQ(result.at("segments"), 2);
  // Newest segment: mean 0.5 on 2024-07-13 (day 185 of 370); 2026-06-01 is 688 days later.
  EXPECT_NEAR(result.at("predicted_percent").get<double>(), 0.5 + slope * 688, 1e-12);
  EXPECT_EQ(result.at("due_date"), "2026-01-14");
}

TEST(EvaluateDrift, HasEveryFieldOfTheContract) {
  const json result = driftResult(driftExample);
  for (const char* field : {"slope_percent_per_year", "slope_standard_error", "slope_interval", "p_value",
                            "residual_standard_deviation", "degrees_of_freedom", "segments", "predicted_percent",
                            "prediction_interval", "crossing_date", "due_date", "state"}) {
    EXPECT_TRUE(result.contains(field)) << field;
  }
  EXPECT_EQ(result.size(), 12u);
  EXPECT_EQ(result.at("slope_interval").size(), 2u);
}

TEST(EvaluateDrift, SaysNullWhereTooFewChecksTell) {
  json document = driftExample;
  document["checks"] = {driftExample["checks"][0]};
  const json result = driftResult(document);
  for (const char* field : {"slope_standard_error", "slope_interval", "p_value", "residual_standard_deviation",
                            "prediction_interval", "crossing_date"}) {
    EXPECT_TRUE(result.at(field).is_null()) << field;
  }
  EXPECT_EQ(result.at("state"), "unknown");
  EXPECT_EQ(result.at("due_date"), "2024-01-16");  // 2023-01-16 + 365 days
}

TEST(EvaluateDrift, SortsAnUnsortedList) {
  json document = driftExample;
  std::reverse(document["checks"].begin(), document["checks"].end());
  EXPECT_EQ(driftResult(document), driftResult(driftExample));
}

TEST(EvaluateDrift, RefusesADateThatDoesNotExist) {
  json document = driftExample;
  document["checks"][1]["date"] = "2025-02-29";
  const Answer answer = evaluate("drift", document.dump());
  EXPECT_EQ(answer.status, 65);
  EXPECT_NE(answer.err.find(R"(checks[1].date: found "2025-02-29")"), std::string::npos) << answer.err;
}

}  // namespace
}  // namespace steadyturn::test
