// The program's own claims held against the record: at each past check, what would have been predicted from what was
// known before it, and what was found.
#pragma once

#include <span>
#include <vector>

#include "drift.h"
#include "fleet_member.h"
#include "forecast_score.h"

namespace steadyturn {

// One tool at one set-point, its whole record in order of time, as found before as left on one day.
struct PastChecks {
  double permittedPercent = 0;
  std::vector<DatedDeviation> checks;
  std::vector<double> tightenings;  // done up to each check; empty: not counted
};

struct BacktestScores {
  ForecastScore fleet;
  // The naive rules: the newest mean deviation with half the permissible deviation as standard deviation; the tool's
  // own regression alone, where it has a degree of freedom.
  ForecastScore lastValue;
  ForecastScore ownRegression;
  ForecastScore fleetWhereOwnSpeaks;  // the fleet's forecasts of the same checks as ownRegression's
  std::size_t assumed = 0;  // of the fleet's forecasts: by assumption, the group's record was too short then

  void add(const BacktestScores& other);
};

// Predicts every check as found that has one before it, from checks of the group on earlier days. Only tools with
// `asked[i]` are scored, all speak; empty: every tool. Cost: one fit a day with checks.
BacktestScores backtest(std::span<const PastChecks> group, Exposure exposure, const std::vector<bool>& asked = {});

}  // namespace steadyturn
