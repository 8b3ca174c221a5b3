// The drift chart of one tool at one set-point: every check with its uncertainty, the tolerance band, adjustments,
// the fitted drift with its prediction band broken at adjustments, the crossing day.
#pragma once

#include "chart_model.h"
#include "forecast_path.h"
#include "records.h"

namespace steadyturn {

// What happened to a tool besides its checks.
enum class HistoryEventKind { ReferenceChanged, Held, Released, Retired };
struct HistoryEvent {
  Date date{};
  HistoryEventKind kind = HistoryEventKind::ReferenceChanged;
  std::string note;  // "checked with REF-2 from here on, before with REF-1"
};

// Tightenings on record up to and with a day.
struct UseCount {
  Date date{};
  std::int64_t tightenings = 0;
};

// What counts of the day asked for, where the tool's fleet was asked, and what is drawn of it.
struct HistoryForecast {
  FleetWord fleet;
  ToolOutlook outlook;
  std::vector<ForecastStep> path{};  // empty where the tool's own record decides
};

struct HistoryData {
  Tool tool;
  StatedTorque target;
  std::vector<PointSummary> points;  // by date, as found before as left
  double limitPercent = 0;
  double confidence = 0.95;
  Date asOf{};
  int intervalDays = 365;
  DriftResult drift;                          // the tool's own regression, as of asOf
  std::vector<HistoryEvent> events{};         // rising
  std::vector<UseCount> uses{};               // rising; one for each day of use
  std::optional<HistoryForecast> forecast{};  // absent: its own regression counts
};

// The fleet or an assumption speaks for it, not its own regression.
bool isBorrowed(const HistoryData& data);
// By whatever counts: the first day on which a check could find it outside, and the day it is due.
std::optional<Date> crossingOf(const HistoryData& data);
Date dueDateOf(const HistoryData& data);
// How far its chart is drawn. REQUIRES: a point.
Date drawnUntil(const HistoryData& data);

// How far a chart's horizontal axis goes by: the calendar, or the tightenings on record.
enum class Along { Calendar, Uses };
// Tightenings are on record on at least two days, so that a chart can go by them.
bool canGoByUses(const HistoryData& data);

// Events stand in a row at its foot. The guard band is the newest check's expanded uncertainty U inside the limits
// (ILAC-G8:09/2019): a mean between the two lines can't be called conforming beyond doubt.
// REQUIRES: canGoByUses(data) to go along the uses.
ChartModel historyChart(const HistoryData& data, Along along = Along::Calendar);

}  // namespace steadyturn
