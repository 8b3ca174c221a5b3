// What is expected of a tool from its newest check on, day by day, where its own record does not speak yet: for a
// chart.
#pragma once

#include <vector>

#include "tool_outlook.h"

namespace steadyturn {

struct ForecastStep {
  Date date{};
  double deviationPercent = 0;  // of one more check on that day
  Interval interval;
};

// By the fleet or by assumption, as decideOutlook does; on asOf the figures are its own. Empty where the tool's own
// record decides: its regression draws itself. At most `pieces` + 2 steps, rising, from the newest check to `until`.
// REQUIRES: `newest` is the member's newest check; rules.asOf not before it; pieces > 0.
std::vector<ForecastStep> forecastPath(const Fleet& fleet, std::size_t member, OutlookBasis basis,
                                       const DatedDeviation& newest, const OutlookRules& rules, Date until,
                                       int pieces);

}  // namespace steadyturn
