#include "foresight_charts.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "history_words.h"
#include "torque.h"

namespace steadyturn {
namespace {

struct RuleLook {
  const char* name;
  ForecastScore BacktestScores::*score;
  Role role;
  Mark mark;
  Stroke stroke;
};
constexpr std::array ruleLooks{
    RuleLook{"fleet", &BacktestScores::fleet, Role::AsFound, Mark::Circle, Stroke::Solid},
    RuleLook{"last value", &BacktestScores::lastValue, Role::AsLeft, Mark::Triangle, Stroke::Dashed},
    RuleLook{"own regression", &BacktestScores::ownRegression, Role::Fit, Mark::Square, Stroke::Dotted}};

std::string percent(double share) { return writeRounded(100 * share, 3) + " %"; }

// The risk that is left at the target, without the rounding of 1 − 0.95.
double allowedPercent(const WhatIf& whatIf) { return std::round(1e6 * (1 - whatIf.target)) / 1e4; }

std::string logScores(const BacktestScores& scores) {
  if (scores.fleet.forecasts() == 0) return {};
  std::string text = "Mean log score, higher is better";
  const char* before = ": ";
  for (const RuleLook& look : ruleLooks) {
    const auto score = (scores.*look.score).meanLogScore();
    text += fmt::format("{}{} {}", before, look.name, score ? signedNumber(*score, 3) : "none");
    before = ", ";
  }
  return text;
}

// A rule's three shares as marks on a line that tells it apart without colour.
void addRule(ChartModel& chart, const RuleLook& look, const ForecastScore& score) {
  if (score.forecasts() == 0) return;
  PointSeries marks{.name = fmt::format("{}, {} checks", look.name, score.forecasts()),
                    .role = look.role,
                    .mark = look.mark,
                    .points = {}};
  LineSeries line{.name = {}, .role = look.role, .stroke = look.stroke, .points = {}};
  for (std::size_t level = 0; level < coverageLevels.size(); ++level) {
    const double held = *score.coverage(level);
    const ChartPoint point{.date = countedAt(static_cast<int>(std::lround(100 * coverageLevels[level]))),
                           .value = 100 * held,
                           .uncertainty = {},
                           .note = fmt::format("{}: its {} intervals held {} of {} checks", look.name,
                                               percent(coverageLevels[level]), percent(held), score.forecasts())};
    marks.points.push_back(point);
    line.points.push_back(point);
  }
  chart.points.push_back(std::move(marks));
  chart.lines.push_back(std::move(line));
}

std::string keepsWords(const WhatIf& whatIf) {
  const auto target = percent(whatIf.target);
  if (!whatIf.keepsTarget) return fmt::format("not even a day keeps {} inside", target);
  return fmt::format("{} days keep {} inside; now {} days", *whatIf.keepsTarget, target, whatIf.intervalNow);
}

ChartModel emptyWhatIf(const WhatIf& whatIf) {
  ChartModel chart{.title = {},
                   .subtitle = keepsWords(whatIf),
                   .basis = {},
                   .valueAxis = {},
                   .points = {},
                   .lines = {},
                   .bands = {},
                   .horizontals = {},
                   .verticals = {},
                   .across = Passage::ofCounts("checking interval, days"),
                   .plainValues = true,
                   .valuesFrom = 0};
  chart.verticals.push_back({.name = fmt::format("now: {} days", whatIf.intervalNow),
                             .role = Role::Today,
                             .date = countedAt(whatIf.intervalNow)});
  if (whatIf.keepsTarget) {
    chart.verticals.push_back({.name = fmt::format("keeps {}: {} days", percent(whatIf.target), *whatIf.keepsTarget),
                               .role = Role::Crossing,
                               .date = countedAt(*whatIf.keepsTarget)});
  }
  return chart;
}

template <typename Figure>
void addCurve(ChartModel& chart, const WhatIf& whatIf, PointSeries marks, Figure figure) {
  LineSeries line{.name = {}, .role = marks.role, .stroke = Stroke::Solid, .points = {}};
  for (const IntervalRisk& one : whatIf.risks) {
    marks.points.push_back(
        {.date = countedAt(one.intervalDays),
         .value = figure(one),
         .uncertainty = {},
         .note = fmt::format("every {} days: {} outside at its end, the worst tool {}; {} checks a year",
                             one.intervalDays, percent(one.risk), percent(one.worstRisk),
                             writeRounded(one.checksPerYear, 3))});
  }
  line.points = marks.points;
  chart.lines.push_back(std::move(line));
  chart.points.push_back(std::move(marks));
}

}  // namespace

ChartModel coverageChart(const BacktestScores& scores, const std::string& scope) {
  ChartModel chart{.title = "Did earlier predictions hold? " + scope,
                   .subtitle = "no check as found on record that could have been predicted",
                   .basis = logScores(scores),
                   .valueAxis = "held what was found, %",
                   .points = {},
                   .lines = {},
                   .bands = {},
                   .horizontals = {},
                   .verticals = {},
                   .across = Passage::ofCounts("intervals meant to hold, %"),
                   .plainValues = true};
  if (const auto held = scores.fleet.coverage(coverageLevels.size() - 1)) {
    chart.subtitle = fmt::format("the fleet's {} intervals held {} of {} checks", percent(coverageLevels.back()),
                                 percent(*held), scores.fleet.forecasts());
  }
  LineSeries asMeant{.name = "as meant", .role = Role::Limit, .stroke = Stroke::Solid, .points = {}};
  constexpr int from = 40, to = 100;  // %: what is shown of the scale
  for (const int share : {from, to}) {
    asMeant.points.push_back(
        {.date = countedAt(share), .value = static_cast<double>(share), .uncertainty = {}, .note = {}});
  }
  chart.lines.push_back(std::move(asMeant));
  for (const RuleLook& look : ruleLooks) addRule(chart, look, scores.*look.score);
  return chart;
}

ChartModel riskChart(const WhatIf& whatIf) {
  ChartModel chart = emptyWhatIf(whatIf);
  chart.title = "Risk of an interval: " + whatIf.scope;
  chart.basis = whatIf.assumed ? "Some tools have no record of their kind yet: for them it is assumed"
                               : "By the fleet's model, from each tool's newest check";
  chart.valueAxis = "outside at its end, %";
  // The tool most at risk is told point by point: its curve would press this one flat.
  addCurve(chart, whatIf,
           {.name = "tools outside, on average", .role = Role::AsFound, .mark = Mark::Circle, .points = {}},
           [](const IntervalRisk& one) { return 100 * one.risk; });
  const double allowed = allowedPercent(whatIf);
  chart.horizontals.push_back(
      {.name = fmt::format("target: at most {} %", writeRounded(allowed, 3)), .role = Role::Limit, .value = allowed});
  return chart;
}

ChartModel effortChart(const WhatIf& whatIf) {
  ChartModel chart = emptyWhatIf(whatIf);
  chart.title = "Effort of an interval: " + whatIf.scope;
  chart.valueAxis = "checks a year";
  addCurve(chart, whatIf, {.name = "checks a year", .role = Role::AsFound, .mark = Mark::Square, .points = {}},
           [](const IntervalRisk& one) { return one.checksPerYear; });
  return chart;
}

}  // namespace steadyturn
