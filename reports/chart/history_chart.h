// The drift chart of one tool at one set-point: every check with its uncertainty, the tolerance band, adjustments,
// the fitted drift with its prediction band broken at adjustments, the crossing day.
#pragma once

#include "chart_model.h"
#include "drift.h"
#include "records.h"

namespace steadyturn {

struct HistoryData {
  Tool tool;
  StatedTorque target;
  std::vector<PointSummary> points;  // by date, as found before as left
  double limitPercent = 0;
  double confidence = 0.95;
  Date asOf{};
  int intervalDays = 365;
  DriftResult drift;  // as of asOf
};

ChartModel historyChart(const HistoryData& data);

}  // namespace steadyturn
