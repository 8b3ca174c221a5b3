// Interval against risk by the fleet's model: how probable it is that a tool checked today is still inside at the end
// of an interval, and how long the interval may be.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "fleet.h"

namespace steadyturn {

// One set-point of a tool.
struct FleetPlace {
  const Fleet* fleet = nullptr;
  std::size_t member = 0;
  double permittedPercent = 0;
};

// The set-points of one tool. The least probable decides: they drift together, so taking them for independent would
// count one risk several times.
using ToolPlaces = std::vector<FleetPlace>;

// That a check `days` after the tool's last one finds every set-point inside. REQUIRES: places not empty.
double probabilityInside(const ToolPlaces& tool, int days);

struct IntervalRisk {
  int intervalDays = 0;
  double risk = 0;           // outside at the end of the interval, mean over the tools
  double worstRisk = 0;      // of the tool most at risk
  double checksPerYear = 0;  // all tools together
};

std::vector<IntervalRisk> intervalRisks(std::span<const ToolPlaces> tools, std::span<const int> intervals);

// The longest interval, up to 20 years, at whose end the mean probability of being inside is still the target or
// more; absent when not even a day keeps it.
std::optional<int> longestInterval(std::span<const ToolPlaces> tools, double target);

}  // namespace steadyturn
