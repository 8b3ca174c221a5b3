#include "history_chart.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "drift_drawing.h"
#include "history_words.h"

namespace steadyturn {
namespace {

// A crossing so far off that the checks would shrink to a corner is told in words only.
std::chrono::days farthestShown(const HistoryData& data, Date last) {
  const auto history = last - data.points.front().date;
  return std::max<std::chrono::days>(std::chrono::days{3 * 365}, 2 * history);
}

void addChecks(ChartModel& chart, const HistoryData& data) {
  PointSeries asFound{.name = "as found", .role = Role::AsFound, .mark = Mark::Circle, .points = {}};
  PointSeries asLeft{.name = "as left", .role = Role::AsLeft, .mark = Mark::Triangle, .points = {}};
  for (const auto& point : data.points) {
    auto& series = point.phase == Phase::AsFound ? asFound : asLeft;
    series.points.push_back({.date = point.date,
                             .value = point.meanDeviation,
                             .uncertainty = 2 * point.standardUncertainty,
                             .note = pointNote(point),
                             .record = point.check});
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

void addGuardBand(ChartModel& chart, const HistoryData& data) {
  const double acceptance = data.limitPercent - 2 * data.points.back().standardUncertainty;
  if (acceptance <= 0) return;
  for (const double guard : {acceptance, -acceptance}) {
    chart.horizontals.push_back({.name = fmt::format("guard band from {} %", signedNumber(guard, 3)),
                                 .role = Role::Guard,
                                 .value = guard,
                                 .stroke = Stroke::Dashed});
  }
}

struct EventLook {
  HistoryEventKind kind;
  const char* name;
  Mark mark;
};
constexpr std::array eventLooks{
    EventLook{HistoryEventKind::ReferenceChanged, "reference standard changed", Mark::Diamond},
    EventLook{HistoryEventKind::Held, "held", Mark::Star},
    EventLook{HistoryEventKind::Released, "released", Mark::Square},
    EventLook{HistoryEventKind::Retired, "retired", Mark::Triangle}};

void addEvents(ChartModel& chart, const HistoryData& data) {
  for (const auto& look : eventLooks) {
    PointSeries series{.name = look.name, .role = Role::Event, .mark = look.mark, .points = {}, .onFloor = true};
    for (const auto& event : data.events) {
      if (event.kind != look.kind) continue;
      series.points.push_back({.date = event.date, .value = 0, .uncertainty = {}, .note = event.note});
    }
    if (!series.points.empty()) chart.points.push_back(std::move(series));
  }
}

Passage passageByUses(const HistoryData& data) {
  std::vector<Passage::Knot> knots;
  // Before the first tightening nothing was used: the first check stands at nought.
  const Date start = data.points.empty() ? data.uses.front().date : data.points.front().date;
  if (start < data.uses.front().date) knots.push_back({start, 0});
  for (const auto& use : data.uses) knots.push_back({use.date, static_cast<double>(use.tightenings)});
  return {std::move(knots), "tightenings on record"};
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
  const auto crossing = crossingOf(data);
  if (!crossing || *crossing > until) return;
  const auto limit = writeRounded(data.limitPercent);
  auto name = *crossing <= data.asOf ? fmt::format("by now could be outside ±{} %", limit)
                                     : fmt::format("could leave ±{} %: {}", limit, writeDate(*crossing));
  chart.verticals.push_back({.name = std::move(name), .role = Role::Crossing, .date = *crossing});
}

}  // namespace

bool isBorrowed(const HistoryData& data) {
  return data.forecast && data.forecast->outlook.basis != OutlookBasis::OwnRecord;
}

std::optional<Date> crossingOf(const HistoryData& data) {
  return isBorrowed(data) ? data.forecast->outlook.crossingDate : data.drift.crossingDate;
}

Date dueDateOf(const HistoryData& data) {
  return isBorrowed(data) ? data.forecast->outlook.dueDate : data.drift.dueDate;
}

Date drawnUntil(const HistoryData& data) {
  const Date last = std::max(data.points.back().date, data.asOf);
  const Date policy = last + std::chrono::days{data.intervalDays};
  const auto crossing = crossingOf(data);
  if (!crossing || *crossing - last > farthestShown(data, last)) return policy;
  return std::max(policy, addMonths(*crossing, 3));
}

bool canGoByUses(const HistoryData& data) {
  return data.uses.size() > 1 && data.uses.back().tightenings > data.uses.front().tightenings;
}

ChartModel historyChart(const HistoryData& data, Along along) {
  ChartModel chart{.title = fmt::format("{} at {}", data.tool.id, writeTorque(data.target)),
                   .subtitle = driftSentence(data),
                   .basis = basisSentence(data),
                   .valueAxis = "mean deviation ± W, %",
                   .points = {},
                   .lines = {},
                   .bands = {},
                   .horizontals = {},
                   .verticals = {},
                   .across = along == Along::Uses ? passageByUses(data) : Passage()};
  addLimits(chart, data.limitPercent);
  if (data.points.empty()) return chart;
  const Date until = drawnUntil(data);
  addChecks(chart, data);
  auto drift = drawDrift(data, until);
  chart.lines = std::move(drift.lines);
  chart.bands = std::move(drift.bands);
  addGuardBand(chart, data);
  addEvents(chart, data);
  addAdjustments(chart, data);
  addCrossing(chart, data, until);
  // The day it was drawn for: "today" only for whoever looks on that day.
  chart.verticals.push_back({.name = "as of " + writeDate(data.asOf), .role = Role::Today, .date = data.asOf});
  return chart;
}

}  // namespace steadyturn
