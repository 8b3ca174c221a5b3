#include <gtest/gtest.h>

#include "run_sturn.h"

namespace steadyturn::test {
namespace {

using nlohmann::json;

// The contract's own example.
const json deliveryExample = json::parse(R"(
{"setting": {"value": 18, "unit": "N.m"},
 "window": {"low": {"value": 16, "unit": "N.m"}, "high": {"value": 20, "unit": "N.m"}},
 "part_limit": {"value": 21, "unit": "N.m"},
 "adapter": {"wrench_length_mm": 400, "offset_mm": 50, "angle_deg": 0},
 "deviation": {"percent": 1.2, "standard_uncertainty_percent": 0.8, "degrees_of_freedom": 6},
 "pull": {"standard_deviation_percent": 0.5, "degrees_of_freedom": 14},
 "resolution": {"value": 0.5, "unit": "N.m"},
 "reference_standard_uncertainty_percent": 0.25})");

json deliveryResult(const json& document) {
  const Answer answer = evaluate("delivery", document.dump());
  EXPECT_EQ(answer.status, 0) << answer.err;
  return answer.json();
}

TEST(EvaluateDelivery, HasEveryFieldOfTheContract) {
  const json result = deliveryResult(deliveryExample);
  for (const char* field : {"expected", "interval", "probability_within", "probability_below", "probability_above",
                            "probability_over_part_limit", "effective_degrees_of_freedom", "best_setting",
                            "probability_within_at_best"}) {
    EXPECT_TRUE(result.contains(field)) << field;
  }
  EXPECT_EQ(result.size(), 9u);
}

// Definition of the deviation in ISO 6789: delivered = 18 · (400 + 50) / 400 / 1.012.
TEST(EvaluateDelivery, ExpectsSettingTimesAdapterOverDeviation) {
  EXPECT_NEAR(deliveryResult(deliveryExample).at("expected").at("value").get<double>(), 18 * 1.125 / 1.012, 1e-12);
}

// Extension table worked from statics (common practice): 100 N·m at the fastener, L 400, E 50, at 60°: set 94.117647.
TEST(EvaluateDelivery, HonoursTheAngleOfAnAdapter) {
  json document = deliveryExample;
  document["setting"]["value"] = 94.117647;
  document["adapter"]["angle_deg"] = 60;
  document["deviation"]["percent"] = 0;
  document["part_limit"]["value"] = 150;
  document["window"] = json::parse(R"({"low": {"value": 90, "unit": "Nm"}, "high": {"value": 110, "unit": "Nm"}})");
  EXPECT_NEAR(deliveryResult(document).at("expected").at("value").get<double>(), 100, 1e-5);
}

// JCGM 100, G.4.1 by hand: u² of deviation, pull, resolution (0.5/18 % wide, rectangular) and reference.
TEST(EvaluateDelivery, CountsDegreesOfFreedomByWelchSatterthwaite) {
  const double deviation = 0.8 * 0.8, pull = 0.5 * 0.5, reference = 0.25 * 0.25;
  const double width = 0.5 / 18 * 100, resolution = width * width / 12;
  const double total = deviation + pull + reference + resolution;
  const double freedom = total * total / (deviation * deviation / 6 + pull * pull / 14);
  EXPECT_NEAR(deliveryResult(deliveryExample).at("effective_degrees_of_freedom").get<double>(), freedom, 1e-9);
}

TEST(EvaluateDelivery, SharesTheProbabilityAmongBelowWithinAndAbove) {
  const json result = deliveryResult(deliveryExample);
  EXPECT_NEAR(result.at("probability_within").get<double>() + result.at("probability_below").get<double>() +
                  result.at("probability_above").get<double>(),
              1, 1e-12);
}

TEST(EvaluateDelivery, BestSettingIsNoWorseThanItsNeighbours) {
  const json best = deliveryResult(deliveryExample);
  for (const double step : {-0.5, 0.5}) {
    json document = deliveryExample;
    document["setting"]["value"] = best.at("best_setting").at("value").get<double>() + step;
    EXPECT_LE(deliveryResult(document).at("probability_within"), best.at("probability_within_at_best"));
  }
}

TEST(EvaluateDelivery, SaysNullWithoutAPartLimitOrWithInfiniteFreedom) {
  json document = deliveryExample;
  document.erase("part_limit");
  document.erase("adapter");
  document["deviation"].erase("degrees_of_freedom");
  document["pull"].erase("degrees_of_freedom");
  const json result = deliveryResult(document);
  EXPECT_TRUE(result.at("probability_over_part_limit").is_null());
  EXPECT_TRUE(result.at("effective_degrees_of_freedom").is_null());
}

TEST(EvaluateDelivery, FindsNoSettingWhereThePartWouldBeInDanger) {
  json document = deliveryExample;
  document["part_limit"]["value"] = 0.1;
  const json result = deliveryResult(document);
  EXPECT_TRUE(result.at("best_setting").is_null());
  EXPECT_TRUE(result.at("probability_within_at_best").is_null());
}

}  // namespace
}  // namespace steadyturn::test
