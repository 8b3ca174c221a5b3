// Tools with few checks in a shop: what the fleet says of them, whether it was right before, and which interval it
// asks for. Field names: app/cli/evaluate/FLEET.md.
#include <gmock/gmock.h>

#include <cmath>

#include "temp_shop.h"

namespace steadyturn::test {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;

TEST_F(DemoShop, PredictsAToolWithOneCheckFromToolsLikeIt) {
  const auto drift = ask({"drift", "W22"});
  EXPECT_EQ(drift.at("state"), "unknown");  // of its own drift nothing is known
  for (const auto& series : drift.at("series")) {
    EXPECT_TRUE(series.at("predicted_percent").is_null());
    const auto& fleet = series.at("fleet");
    EXPECT_EQ(fleet.at("basis"), "estimated");
    EXPECT_EQ(fleet.at("borrowed_percent"), 100);
    EXPECT_GE(fleet.at("tools_with_drift"), 5);
    EXPECT_EQ(series.at("outlook").at("basis"), "fleet");
    EXPECT_EQ(series.at("outlook").at("prediction_interval"), fleet.at("prediction_interval"));
  }
  EXPECT_THAT(run({"drift", "W22"}).out, HasSubstr("Tools like it"));
}

TEST_F(DemoShop, LetsALongRecordSpeakForItself) {
  const auto series = ask({"drift", "W04"}).at("series").at(0);
  ASSERT_GE(series.at("degrees_of_freedom"), 3);
  EXPECT_EQ(series.at("outlook").at("basis"), "own record");
  EXPECT_EQ(series.at("outlook").at("prediction_interval"), series.at("prediction_interval"));
  EXPECT_EQ(series.at("outlook").at("due_date"), series.at("due_date"));
  EXPECT_LT(series.at("fleet").at("borrowed_percent"), 100);
}

TEST_F(DemoShop, BacktestCoversAndBeatsTheNaiveRules) {
  const auto report = ask({"backtest"});
  const auto& fleet = report.at("fleet");
  EXPECT_GE(fleet.at("forecasts"), 200);
  // Three set-points of one check go together: the bounds are those of a third as many independent checks.
  const double independent = fleet.at("forecasts").get<double>() / 3;
  const double slack = 3 * std::sqrt(0.95 * 0.05 / independent) * 100;
  EXPECT_NEAR(fleet.at("coverage_95_percent").get<double>(), 95, slack);
  EXPECT_GT(fleet.at("mean_log_score"), report.at("last_value").at("mean_log_score"));
  EXPECT_GT(report.at("fleet_where_own_speaks").at("mean_log_score"),
            report.at("own_regression").at("mean_log_score"));
  EXPECT_GE(report.at("groups").size(), 1U);

  const auto one = ask({"backtest", "W08"});
  EXPECT_EQ(one.at("scope"), "W08");
  EXPECT_LT(one.at("fleet").at("forecasts"), fleet.at("forecasts"));
  EXPECT_THAT(run({"backtest", "type II class A"}).out, HasSubstr("own regression only"));
  EXPECT_EQ(run({"backtest", "no such thing"}).status, 65);
}

TEST_F(DemoShop, SaysHowLongTheIntervalMayBe) {
  const auto report = ask({"interval", "W08", "--minutes", "30"});
  EXPECT_EQ(report.at("tools"), json::array({"W08"}));
  EXPECT_EQ(report.at("methods").size(), 3U);
  const int kept = report.at("fleet_interval_days");
  const auto tried = [&](int days) {
    return ask({"interval", "W08", "--intervals", std::to_string(days)})
        .at("what_if")
        .at(0)
        .at("risk_percent")
        .get<double>();
  };
  EXPECT_LE(tried(kept), 5);
  EXPECT_GT(tried(kept + 1), 5);
  for (const auto& row : report.at("what_if")) {
    EXPECT_NEAR(row.at("checks_per_year").get<double>() * row.at("interval_days").get<double>(), 365.25, 1e-9);
    EXPECT_DOUBLE_EQ(row.at("hours_per_year").get<double>(), row.at("checks_per_year").get<double>() / 2);
  }
  const auto group = ask({"interval", "--group", "type II class A"});
  EXPECT_GT(group.at("tools").size(), 5U);
  EXPECT_GE(group.at("observed").at("checks"), group.at("observed").at("inside"));
  EXPECT_TRUE(group.at("methods").empty());
  EXPECT_EQ(run({"interval", "W08", "--target", "100"}).status, 65);
  EXPECT_EQ(run({"interval", "W08", "--group", "x"}).status, 64);
}

TEST_F(NewShop, SaysWhichToolsAreAlikeByName) {
  addToolAndReference();
  EXPECT_EQ(ask({"tool", "group", "T1", "--name", "wheel wrenches"}).at("group"), "wheel wrenches");
  EXPECT_EQ(ask({"tool", "group"}).at("groups"), json::array({{{"tool", "T1"}, {"group", "wheel wrenches"}}}));
  ASSERT_EQ(record("2026-01-10", "as_found", "target,reading,unit\n60,59.4,N.m\n").status, 0);
  EXPECT_TRUE(ask({"verify"}).at("intact"));
  EXPECT_TRUE(ask({"tool", "group", "T1", "--automatic"}).at("group").is_null());
  EXPECT_TRUE(ask({"tool", "group"}).at("groups").empty());
  EXPECT_EQ(run({"tool", "group", "T1"}).status, 65);
  EXPECT_EQ(run({"tool", "group", "T9", "--name", "x"}).status, 65);
  EXPECT_EQ(run({"tool", "group", "T1", "--name", "x", "--automatic"}).status, 64);
}

// The contract's assumption while a tool's drift is unknown and no fleet is on record: its newest mean deviation with
// half its permissible deviation, in choose; the drift says what is assumed.
TEST_F(NewShop, SaysSoWhileNothingIsOnRecord) {
  addToolAndReference();
  ASSERT_EQ(record("2026-01-10", "as_found",
                   "target,reading,unit\n60,59.4,N.m\n60,59.4,N.m\n60,59.4,N.m\n60,59.4,N.m\n60,59.4,N.m\n")
                .status,
            0);
  const auto series = ask({"drift", "T1", "--as-of", "2026-02-01"}).at("series").at(0);
  EXPECT_EQ(series.at("fleet").at("basis"), "assumed");
  EXPECT_THAT(series.at("fleet").at("assumption").get<std::string>(), HasSubstr("ISO 6789"));
  EXPECT_EQ(series.at("outlook").at("basis"), "assumption");
  EXPECT_DOUBLE_EQ(series.at("outlook").at("standard_error").get<double>(), 2);
  EXPECT_EQ(series.at("outlook").at("due_date"), "2027-01-10");
  EXPECT_THAT(run({"drift", "T1", "--as-of", "2026-02-01"}).out, HasSubstr("Assumed"));
}

}  // namespace
}  // namespace steadyturn::test
