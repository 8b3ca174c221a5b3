// The control chart of a history: is the tool behaving as it has so far?
#pragma once

#include <optional>

#include "history_chart.h"

namespace steadyturn {

// Mean deviations as found, with the limits that their own moving ranges set, and their running mean (EWMA) with its
// limits. Absent with fewer than two checks as found. Control limits say what is usual for this tool; whether it may
// be used, its permissible deviation says.
std::optional<ChartModel> controlChart(const HistoryData& data);

}  // namespace steadyturn
