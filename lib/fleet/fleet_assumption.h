// What is assumed of tools that have too short a record to estimate anything from: stated, and conservative.
#pragma once

#include <string>

#include "fleet_model.h"

namespace steadyturn {

// ISO 6789-1:2017 rechecks a tool after 12 months or 5,000 uses where a shop has no procedure of its own [from
// memory]. One unit of exposure is that interval: a year, or 5,000 tightenings.
inline constexpr double tighteningsPerInterval = 5000;

// Common practice, built on two rules of ISO 6789 [from memory]:
// - the interval is meant to keep 95 % of tools inside the permissible deviation. So a tool found at 0 and checked
//   again after one interval is taken to scatter with half its permissible deviation (95 % within ± 2 of that);
// - a reference may have an expanded uncertainty (k = 2) of a quarter of the permissible deviation at most. One check
//   is taken to scatter about the tool's line with half of that quarter;
// - what is left is drift, half of its variance common to the group, half each tool's own. No direction is assumed.
FleetAssumption assumptionFor(double permittedPercent);

// The same in a sentence, with its figures.
std::string assumptionText(double permittedPercent);

}  // namespace steadyturn
