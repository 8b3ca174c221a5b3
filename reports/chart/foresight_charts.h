// What the shop's predictions are worth: whether earlier ones held, and what another checking interval would cost.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backtest.h"
#include "chart_model.h"
#include "interval_risk.h"

namespace steadyturn {

// Of the intervals predicted before each past check, the share that held what was found, against what they promised:
// the fleet, and the two naive rules. Told with their mean log scores.
ChartModel coverageChart(const BacktestScores& scores, const std::string& scope);

// An interval, its risk and its effort.
struct WhatIf {
  std::string scope;
  int intervalNow = 0;              // days
  double target = 0.95;             // share to be inside at the end of the interval
  std::optional<int> keepsTarget;   // days; absent: not even one
  bool assumed = false;             // some fleet has no record yet
  std::vector<IntervalRisk> risks;  // rising by interval
};

// The share of tools outside their permissible deviation at the end of an interval, with the interval that keeps the
// target. Below it the checks that it takes a year, by the same scale of days.
ChartModel riskChart(const WhatIf& whatIf);
ChartModel effortChart(const WhatIf& whatIf);

}  // namespace steadyturn
