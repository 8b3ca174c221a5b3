#include "history_chart.h"

#include <fmt/format.h>

#include <algorithm>

#include "drift_drawing.h"
#include "history_words.h"

namespace steadyturn {
namespace {

// A crossing so far off that the checks would shrink to a corner is told in words only.
std::chrono::days farthestShown(const HistoryData& data, Date last) {
  const auto history = last - data.points.front().date;
  return std::max<std::chrono::days>(std::chrono::days{3 * 365}, 2 * history);
}

Date drawnUntil(const HistoryData& data) {
  const Date last = std::max(data.points.back().date, data.asOf);
  const Date policy = last + std::chrono::days{data.intervalDays};
  const auto& crossing = data.drift.crossingDate;
  if (!crossing || *crossing - last > farthestShown(data, last)) return policy;
  return std::max(policy, addMonths(*crossing, 3));
}

void addChecks(ChartModel& chart, const HistoryData& data) {
  PointSeries asFound{.name = "as found", .role = Role::AsFound, .mark = Mark::Circle, .points = {}};
  PointSeries asLeft{.name = "as left", .role = Role::AsLeft, .mark = Mark::Triangle, .points = {}};
  for (const auto& point : data.points) {
    auto& series = point.phase == Phase::AsFound ? asFound : asLeft;
    series.points.push_back({.date = point.date,
                             .value = point.meanDeviation,
                             .uncertainty = 2 * point.standardUncertainty,
                             .note = pointNote(point)});
  }
  for (auto* series : {&asFound, &asLeft}) {
    if (!series->points.empty()) chart.points.push_back(std::move(*series));
  }
}

void addLimits(ChartModel& chart, double limitPercent) {
  for (const double limit : {limitPercent, -limitPercent}) {
    chart.horizontals.push_back(
        {.name = fmt::format("limit {} %", signedNumber(limit, 4)), .role = Role::Limit, .value = limit});
  }
}

void addAdjustments(ChartModel& chart, const HistoryData& data) {
  for (const auto& point : data.points) {
    if (point.phase != Phase::AsLeft) continue;
    if (!chart.verticals.empty() && chart.verticals.back().date == point.date) continue;
    chart.verticals.push_back(
        {.name = "adjusted " + writeDate(point.date), .role = Role::Adjustment, .date = point.date});
  }
}

void addCrossing(ChartModel& chart, const HistoryData& data, Date until) {
  const auto& crossing = data.drift.crossingDate;
  if (!crossing || *crossing > until) return;
  const auto limit = writeRounded(data.limitPercent);
  auto name = *crossing <= data.asOf ? fmt::format("by now could be outside ±{} %", limit)
                                     : fmt::format("could leave ±{} %: {}", limit, writeDate(*crossing));
  chart.verticals.push_back({.name = std::move(name), .role = Role::Crossing, .date = *crossing});
}

}  // namespace

ChartModel historyChart(const HistoryData& data) {
  ChartModel chart{.title = fmt::format("{} at {}", data.tool.id, writeTorque(data.target)),
                   .subtitle = driftSentence(data),
                   .valueAxis = "mean deviation ± W, %",
                   .points = {},
                   .lines = {},
                   .bands = {},
                   .horizontals = {},
                   .verticals = {}};
  addLimits(chart, data.limitPercent);
  if (data.points.empty()) return chart;
  const Date until = drawnUntil(data);
  addChecks(chart, data);
  auto drift = drawDrift(data, until);
  chart.lines = std::move(drift.lines);
  chart.bands = std::move(drift.bands);
  addAdjustments(chart, data);
  addCrossing(chart, data, until);
  // The day it was drawn for: "today" only for whoever looks on that day.
  chart.verticals.push_back({.name = "as of " + writeDate(data.asOf), .role = Role::Today, .date = data.asOf});
  return chart;
}

}  // namespace steadyturn
