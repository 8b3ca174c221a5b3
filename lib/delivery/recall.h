// After a failed check: what each tightening since the last good check probably received.
#pragma once

#include <vector>

#include "date.h"
#include "delivery.h"

namespace steadyturn {

// A tool's mean deviation as known from one check at its set-points (rising by target).
struct KnownDeviation {
  StatedTorque target;
  double meanDeviationPercent = 0;
  Uncertainty pull{};
  double standardUncertaintyPercent = 0;     // of the mean deviation (the check's w, or a prediction's)
  std::optional<double> degreesOfFreedom{};  // of that; absent: infinite
};

// The deviation in doubt: between the last good check and the failed one.
struct DoubtfulPeriod {
  Date lastGood{};
  std::vector<KnownDeviation> good;  // as left (or as found) at lastGood; empty when there never was a good check
  Date foundBad{};
  std::vector<KnownDeviation> bad;
};

struct PastTightening {
  Date date{};
  StatedTorque setting;
  Window window;
  std::optional<StatedTorque> partLimit{};
  std::optional<StatedTorque> resolution{};
};

struct RecallFigure {
  double deviationPercent = 0;
  double probabilityBelow = 0;
  double probabilityAbove = 0;
  std::optional<double> probabilityOverPartLimit{};
};

struct RecallResult {
  RecallFigure onTheDay;   // deviation interpolated in time between the two checks
  RecallFigure worstCase;  // with the deviation found bad
  // Beside them, where there never was a good check to interpolate from: the drift back from the failed check is
  // borrowed from the tool's fleet.
  std::optional<RecallFigure> byFleet{};
};

// Interpolates along the range between set-points (constant outside), and in time between the two checks (clamped to
// them). The larger of the two checks' standard uncertainties and of their pull scatters is taken, for the worst case
// too. With no good check the deviation found bad is used throughout. REQUIRES: bad not empty; a setting and window
// without problems (see problemsOf in delivery.h).
RecallResult recallTightening(const DoubtfulPeriod& period, const PastTightening& tightening);

// With the deviation known on that day, at set-points rising by target. REQUIRES: onTheDay not empty.
RecallFigure recallFigure(const std::vector<KnownDeviation>& onTheDay, const PastTightening& tightening);

// Worst first: by the larger of P(over part limit) and P(outside the window), on the day.
bool worseThan(const RecallResult& a, const RecallResult& b);

}  // namespace steadyturn
