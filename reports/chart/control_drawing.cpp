#include "control_drawing.h"

#include <fmt/format.h>

#include "control_chart.h"
#include "history_words.h"

namespace steadyturn {
namespace {

constexpr EwmaRule usualRule{};

bool holds(const std::vector<std::size_t>& indices, std::size_t index) {
  return std::find(indices.begin(), indices.end(), index) != indices.end();
}

std::string sentence(const std::vector<const PointSummary*>& found, const ControlChart& single,
                     const ControlChart& running) {
  std::string text = "behaves as it has so far";
  if (!single.outside.empty()) {
    text = fmt::format("out of line on {}", writeDate(found[single.outside.back()]->date));
  } else if (!running.outside.empty()) {
    text = fmt::format("creeping to one side, seen on {}", writeDate(found[running.outside.front()]->date));
  }
  if (found.size() < settledCount) text += fmt::format("; {} checks: limits provisional", found.size());
  return text;
}

void addLimits(ChartModel& chart, const ControlChart& of, const char* name, Stroke stroke) {
  for (const double limit : {of.limits.high, of.limits.low}) {
    chart.horizontals.push_back({.name = fmt::format("{} {} %", name, signedNumber(limit, 3)),
                                 .role = Role::Control,
                                 .value = limit,
                                 .stroke = stroke});
  }
}

}  // namespace

std::optional<ChartModel> controlChart(const HistoryData& data) {
  std::vector<const PointSummary*> found;
  std::vector<double> means;
  for (const auto& point : data.points) {
    if (point.phase != Phase::AsFound) continue;
    found.push_back(&point);
    means.push_back(point.meanDeviation);
  }
  const auto single = individualsChart(means);
  if (!single) return std::nullopt;
  const auto running = ewmaChart(
      means, {.weight = usualRule.weight, .start = single->limits.centre, .sigma = *movingRangeSigma(means)});
  ChartModel chart{.title = fmt::format("Control chart of {} at {}", data.tool.id, writeTorque(data.target)),
                   .subtitle = sentence(found, *single, running),
                   .basis = "what is usual for this tool, not what is permitted",
                   .valueAxis = "mean deviation as found, %",
                   .points = {},
                   .lines = {},
                   .bands = {},
                   .horizontals = {},
                   .verticals = {}};
  PointSeries checks{.name = "as found", .role = Role::AsFound, .mark = Mark::Circle, .points = {}};
  PointSeries out{.name = "out of line", .role = Role::Limit, .mark = Mark::Star, .points = {}};
  LineSeries mean{.name = fmt::format("running mean (EWMA, weight {})", usualRule.weight),
                  .role = Role::Fit,
                  .stroke = Stroke::Solid,
                  .points = {}};
  for (std::size_t i = 0; i < found.size(); ++i) {
    auto& series = holds(single->outside, i) ? out : checks;
    series.points.push_back({.date = found[i]->date,
                             .value = means[i],
                             .uncertainty = {},
                             .note = pointNote(*found[i]),
                             .record = found[i]->check});
    mean.points.push_back({.date = found[i]->date, .value = running.values[i], .uncertainty = {}, .note = {}});
  }
  for (auto* series : {&checks, &out}) {
    if (!series->points.empty()) chart.points.push_back(std::move(*series));
  }
  chart.lines.push_back(std::move(mean));
  addLimits(chart, *single, "usual to", Stroke::Solid);
  addLimits(chart, running, "mean usual to", Stroke::Dotted);
  return chart;
}

}  // namespace steadyturn
