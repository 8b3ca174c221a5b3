#include "history_chart.h"

#include <gmock/gmock.h>

#include <set>

#include "control_drawing.h"
#include "demo_reports.h"

namespace steadyturn {
namespace {

using test::historyOf;
using test::summary;
using testing::Contains;
using testing::Field;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;
using testing::StartsWith;

Date on(const char* date) { return parseDate(date, "date").value(); }

const VerticalLine* lineOf(const ChartModel& chart, Role role) {
  for (const auto& line : chart.verticals) {
    if (line.role == role) return &line;
  }
  return nullptr;
}

TEST(HistoryChart, ShowsChecksByPhaseWithTheirExpandedUncertainty) {
  const auto chart = historyChart(test::demoHistory());
  ASSERT_THAT(chart.points, SizeIs(2));
  EXPECT_EQ(chart.points[0].mark, Mark::Circle);
  EXPECT_THAT(chart.points[0].points, SizeIs(13));
  EXPECT_EQ(chart.points[1].mark, Mark::Triangle);
  EXPECT_THAT(chart.points[1].points, SizeIs(1));
  // W = 2 w (ISO 6789-2:2017, k = 2): w is 0.3 in the demo.
  EXPECT_DOUBLE_EQ(chart.points[0].points[0].uncertainty.value(), 0.6);
  EXPECT_EQ(chart.points[0].points[6].note, "2023-02-14, as found: +4.4 % ± 0.6 % (k = 2), fail");
}

TEST(HistoryChart, LabelsBothLimitsWithTheirNumbers) {
  const auto chart = historyChart(test::demoHistory());
  EXPECT_THAT(chart.horizontals, Contains(Field(&HorizontalLine::name, "limit +4 %")));
  EXPECT_THAT(chart.horizontals, Contains(Field(&HorizontalLine::name, "limit −4 %")));
}

TEST(HistoryChart, BreaksLineAndBandAtTheAdjustment) {
  const auto history = test::demoHistory();
  const auto chart = historyChart(history);
  const Date adjusted = on("2023-02-14");
  ASSERT_THAT(chart.bands, SizeIs(2));
  ASSERT_THAT(chart.lines, SizeIs(2));
  EXPECT_EQ(chart.bands[0].edges.back().date, adjusted);
  EXPECT_EQ(chart.bands[1].edges.front().date, adjusted);
  EXPECT_EQ(chart.lines[0].points.back().date, adjusted);
  EXPECT_EQ(chart.lines[1].points.front().date, adjusted);
  // One slope for the tool: both pieces rise alike (domain: analysis of covariance with a common slope).
  const auto rate = [](const LineSeries& line) {
    return (line.points.back().value - line.points.front().value) /
           yearsBetween(line.points.front().date, line.points.back().date);
  };
  EXPECT_NEAR(rate(chart.lines[0]), rate(chart.lines[1]), 1e-9);
  EXPECT_NEAR(rate(chart.lines[0]), history.drift.slopePercentPerYear.value(), 1e-9);
}

TEST(HistoryChart, BandIsThePredictionOnTheDayItIsDrawnFor) {
  auto history = test::demoHistory();
  const auto chart = historyChart(history);
  const auto& edges = chart.bands.back().edges;
  // The edge nearest to asOf is at most a 48th of the band away from it.
  const auto nearest =
      std::ranges::min_element(edges, {}, [&](const auto& edge) { return abs(edge.date - history.asOf); });
  EXPECT_NEAR(nearest->low, history.drift.predictionInterval->low, 0.1);
  EXPECT_NEAR(nearest->high, history.drift.predictionInterval->high, 0.1);
  for (std::size_t i = 1; i < edges.size(); ++i) {
    EXPECT_LT(edges[i - 1].date, edges[i].date);
    EXPECT_LT(edges[i].low, edges[i].high);
  }
}

TEST(HistoryChart, MarksAdjustmentAndTheDayItIsDrawnFor) {
  const auto chart = historyChart(test::demoHistory());
  ASSERT_NE(lineOf(chart, Role::Adjustment), nullptr);
  EXPECT_EQ(lineOf(chart, Role::Adjustment)->name, "adjusted 2023-02-14");
  ASSERT_NE(lineOf(chart, Role::Today), nullptr);
  EXPECT_EQ(lineOf(chart, Role::Today)->date, on("2026-06-01"));
}

HistoryData drifting() {
  using enum Phase;
  return historyOf({summary("2022-01-10", AsFound, 0.11), summary("2023-01-10", AsFound, 0.88),
                    summary("2024-01-10", AsFound, 1.92), summary("2025-01-10", AsFound, 2.79)},
                   on("2025-02-01"));
}

TEST(HistoryChart, CarriesTheBandPastTheCrossingAndNamesItsDay) {
  const auto history = drifting();
  const auto chart = historyChart(history);
  ASSERT_TRUE(history.drift.crossingDate);
  const auto day = writeDate(*history.drift.crossingDate);
  ASSERT_NE(lineOf(chart, Role::Crossing), nullptr);
  EXPECT_EQ(lineOf(chart, Role::Crossing)->date, *history.drift.crossingDate);
  EXPECT_THAT(lineOf(chart, Role::Crossing)->name, HasSubstr(day));
  EXPECT_GT(chart.bands.back().edges.back().date, *history.drift.crossingDate);
  EXPECT_GE(chart.bands.back().edges.back().date, history.asOf + std::chrono::days{365});
  EXPECT_EQ(chart.subtitle, "drifts by +0.91 % a year; could leave ±4 % around " + day);
}

TEST(HistoryChart, SaysWhenItCouldBeOutsideAlready) {
  EXPECT_THAT(historyChart(test::demoHistory()).subtitle,
              HasSubstr("the next check could find it outside ±4 % already"));
}

TEST(HistoryChart, SaysSteadyWhereNoDriftCanBeTold) {
  using enum Phase;
  const auto chart = historyChart(historyOf(
      {summary("2021-01-10", AsFound, 0.2), summary("2022-01-10", AsFound, 0.1), summary("2023-01-10", AsFound, 0.25),
       summary("2024-01-10", AsFound, 0.1), summary("2025-01-10", AsFound, 0.15)},
      on("2025-02-01")));
  EXPECT_THAT(chart.subtitle, StartsWith("steady"));
}

TEST(HistoryChart, DoesNotCallScatterADrift) {
  using enum Phase;
  const auto history = historyOf({summary("2021-06-10", AsFound, -0.3), summary("2022-05-20", AsFound, 1.9),
                                  summary("2023-05-01", AsFound, -1.8), summary("2024-04-10", AsFound, 2.4),
                                  summary("2025-04-01", AsFound, -0.4)},
                                 on("2025-05-01"));
  ASSERT_EQ(history.drift.state, DriftState::Leaving);
  EXPECT_THAT(historyChart(history).subtitle, StartsWith("no clear drift, but the checks scatter; "));
}

TEST(HistoryChart, OneCheckHasNoLineAndSaysWhy) {
  const auto chart = historyChart(historyOf({summary("2026-01-10", Phase::AsFound, 0.4)}, on("2026-02-01")));
  EXPECT_THAT(chart.lines, IsEmpty());
  EXPECT_THAT(chart.bands, IsEmpty());
  EXPECT_THAT(chart.points, SizeIs(1));
  EXPECT_EQ(chart.subtitle, "too few checks to tell a drift");
}

TEST(HistoryChart, TwoChecksHaveALineButNoBand) {
  using enum Phase;
  const auto chart = historyChart(
      historyOf({summary("2025-01-10", AsFound, 0.4), summary("2026-01-10", AsFound, 0.8)}, on("2026-02-01")));
  EXPECT_THAT(chart.lines, SizeIs(1));
  EXPECT_THAT(chart.bands, IsEmpty());
}

TEST(HistoryChart, DrawsTheGuardBandOfTheNewestCheck) {
  // Limit 4 %, U = 2 w = 0.6 % in the demo: acceptance from −3.4 to +3.4 % (ILAC-G8:09/2019).
  const auto chart = historyChart(test::demoHistory());
  for (const double acceptance : {3.4, -3.4}) {
    EXPECT_THAT(chart.horizontals,
                Contains(testing::AllOf(Field(&HorizontalLine::role, Role::Guard),
                                        Field(&HorizontalLine::value, testing::DoubleNear(acceptance, 1e-9)))));
  }
}

TEST(HistoryChart, MarksEventsAtTheFootByShape) {
  auto history = test::demoHistory();
  history.events = {
      {on("2022-03-01"), HistoryEventKind::Held, "2022-03-01, held: dropped"},
      {on("2022-04-01"), HistoryEventKind::Released, "2022-04-01, released"},
      {on("2023-02-14"), HistoryEventKind::ReferenceChanged, "2023-02-14, checked with R2, before with R1"}};
  const auto chart = historyChart(history);
  std::set<Mark> marks;
  for (const auto& series : chart.points) {
    if (!series.onFloor) continue;
    marks.insert(series.mark);
    EXPECT_THAT(series.points, SizeIs(1));
  }
  EXPECT_THAT(marks, SizeIs(3));
}

TEST(HistoryChart, GoesByTighteningsWhereTheyAreOnRecord) {
  auto history = test::demoHistory();
  EXPECT_FALSE(canGoByUses(history));
  history.uses = {{on("2021-06-01"), 10}, {on("2024-06-01"), 400}};
  ASSERT_TRUE(canGoByUses(history));
  const auto chart = historyChart(history, Along::Uses);
  EXPECT_FALSE(chart.across.byCalendar());
  EXPECT_DOUBLE_EQ(chart.across.place(on("2021-06-01")), 10);
  EXPECT_DOUBLE_EQ(chart.across.place(on("2024-06-01")), 400);
}

TEST(ControlChart, ShowsWhatIsUsualAndSaysWhatFellOut) {
  const auto chart = controlChart(test::demoHistory());
  ASSERT_TRUE(chart);
  EXPECT_THAT(chart->horizontals, SizeIs(4));
  EXPECT_THAT(chart->subtitle, HasSubstr("13 checks: limits provisional"));
  EXPECT_FALSE(controlChart(historyOf({summary("2026-01-10", Phase::AsFound, 0.4)}, on("2026-02-01"))));
}

TEST(HistoryChart, WithoutChecksStillShowsTheLimits) {
  const auto chart = historyChart(historyOf({}, on("2026-02-01")));
  EXPECT_THAT(chart.horizontals, SizeIs(2));
  EXPECT_THAT(chart.points, IsEmpty());
  EXPECT_EQ(chart.subtitle, "never checked at this set-point");
}

}  // namespace
}  // namespace steadyturn
