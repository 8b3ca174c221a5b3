// The charts of what predictions are worth, and of another checking interval: figures, axes and words.
#include "foresight_charts.h"

#include <gmock/gmock.h>

namespace steadyturn {
namespace {

using testing::Contains;
using testing::Field;
using testing::HasSubstr;
using testing::SizeIs;

// Four forecasts with standard normal errors of 0, 0.5, 1 and 3: the central 50 % reach to 0.674, 80 % to 1.282, 95 %
// to 1.960 (quantiles of the normal, any table), so 2, 3 and 3 of them are held.
ForecastScore fourForecasts() {
  ForecastScore score;
  for (const double error : {0.0, 0.5, 1.0, 3.0}) {
    score.add({.mean = 0, .standardError = 1, .degreesOfFreedom = {}}, error);
  }
  return score;
}

TEST(CoverageChart, HoldsEachRuleAgainstWhatItPromised) {
  BacktestScores scores;
  scores.fleet = fourForecasts();
  scores.lastValue = fourForecasts();
  const auto chart = coverageChart(scores, "W08");
  ASSERT_THAT(chart.points, SizeIs(2)) << "the own regression predicted nothing";
  EXPECT_NE(chart.points[0].mark, chart.points[1].mark);
  const auto& fleet = chart.points[0];
  EXPECT_EQ(fleet.name, "fleet, 4 checks");
  ASSERT_THAT(fleet.points, SizeIs(3));
  const double nominal[] = {50, 80, 95};
  const double held[] = {50, 75, 75};
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_DOUBLE_EQ(chart.across.place(fleet.points[i].date), nominal[i]);
    EXPECT_DOUBLE_EQ(fleet.points[i].value, held[i]);
  }
  EXPECT_EQ(chart.subtitle, "the fleet's 95 % intervals held 75 % of 4 checks");
  // −½ ln 2π − mean of z²/2 = −0.919 − 10.25/8 = −2.20, by hand.
  EXPECT_THAT(chart.basis, HasSubstr("fleet −2.2, last value −2.2, own regression none"));
  // The line of honest intervals goes through (50, 50) and (95, 95).
  const auto& meant = chart.lines.front();
  for (const auto& point : meant.points) EXPECT_DOUBLE_EQ(chart.across.place(point.date), point.value);
}

TEST(CoverageChart, SaysWhereNothingCouldBePredicted) {
  const auto chart = coverageChart({}, "W22");
  EXPECT_TRUE(chart.points.empty());
  EXPECT_THAT(chart.subtitle, HasSubstr("no check"));
}

WhatIf whatIf() {
  return {.scope = "shop",
          .intervalNow = 365,
          .target = 0.95,
          .keepsTarget = 412,
          .risks = {{.intervalDays = 183, .risk = 0.012, .worstRisk = 0.08, .checksPerYear = 48},
                    {.intervalDays = 365, .risk = 0.041, .worstRisk = 0.21, .checksPerYear = 24},
                    {.intervalDays = 730, .risk = 0.13, .worstRisk = 0.55, .checksPerYear = 12}}};
}

TEST(RiskChart, MarksTheIntervalThatKeepsTheTarget) {
  const auto chart = riskChart(whatIf());
  EXPECT_EQ(chart.across.name(), "checking interval, days");
  ASSERT_THAT(chart.points, SizeIs(1));
  EXPECT_DOUBLE_EQ(chart.across.place(chart.points[0].points[1].date), 365);
  EXPECT_DOUBLE_EQ(chart.points[0].points[1].value, 4.1);
  EXPECT_THAT(chart.verticals, Contains(Field(&VerticalLine::name, "keeps 95 %: 412 days")));
  EXPECT_THAT(chart.verticals, Contains(Field(&VerticalLine::name, "now: 365 days")));
  EXPECT_THAT(chart.horizontals, Contains(Field(&HorizontalLine::name, "target: at most 5 %")));
  EXPECT_EQ(chart.horizontals.front().value, 5);
  EXPECT_EQ(chart.subtitle, "412 days keep 95 % inside; now 365 days");
  EXPECT_EQ(chart.points[0].points[1].note,
            "every 365 days: 4.1 % outside at its end, the worst tool 21 %; 24 checks a year");
}

TEST(RiskChart, SaysWhereNoIntervalKeepsTheTarget) {
  auto none = whatIf();
  none.keepsTarget.reset();
  EXPECT_THAT(riskChart(none).verticals, SizeIs(1));
  EXPECT_EQ(riskChart(none).subtitle, "not even a day keeps 95 % inside");
}

TEST(EffortChart, GoesByTheSameDays) {
  const auto chart = effortChart(whatIf());
  EXPECT_EQ(chart.valueAxis, "checks a year");
  EXPECT_EQ(chart.across.name(), riskChart(whatIf()).across.name());
  ASSERT_THAT(chart.points, SizeIs(1));
  EXPECT_EQ(chart.points[0].points[0].value, 48);
  EXPECT_TRUE(chart.plainValues);
}

}  // namespace
}  // namespace steadyturn
