// What the record says of an interval: how many tools were still inside their permissible deviation when their next
// check came.
#pragma once

#include <optional>
#include <span>

#include "backtest.h"

namespace steadyturn {

struct ObservedReliability {
  std::size_t checks = 0;  // as found, with a check before
  std::size_t inside = 0;  // of them, mean deviation within ± permissible deviation
  double meanDays = 0;     // since the check before
  std::optional<double> share;
  std::optional<Interval> bounds;  // Clopper–Pearson at the confidence asked for
};

// Tools' visits as found: a visit is inside when every set-point is. `visits` hold one tool each, every set-point a
// PastChecks. Only visits that came `from` to `to` days after the one before count.
ObservedReliability observedReliability(std::span<const std::vector<PastChecks>> tools, double from, double to,
                                        double confidence);

}  // namespace steadyturn
