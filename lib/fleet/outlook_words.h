// What a prediction rests on, in one sentence: the same on the chart, the tool's page and the command line.
#pragma once

#include <string>

#include "tool_outlook.h"

namespace steadyturn {

// How much is borrowed from tools alike, or that it is assumed. Where wear goes by tightenings rather than by days,
// it says so: "Drift borrowed from the fleet: 83 %, 7 tools alike; wear goes by tightenings, not by days".
std::string borrowedSentence(OutlookBasis basis, const FleetWord& word);

}  // namespace steadyturn
