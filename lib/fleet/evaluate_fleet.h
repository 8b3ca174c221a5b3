// A whole group at once, from plain values: what `sturn evaluate fleet` answers.
#pragma once

#include <string>

#include "fleet.h"

namespace steadyturn {

struct FleetCheck {
  DatedDeviation found;
  std::optional<double> tightenings;  // done up to this check
};

struct FleetToolInput {
  std::string tool;
  std::vector<FleetCheck> checks;
  std::optional<double> tightenings;  // done up to asOf
};

struct FleetInput {
  double limitPercent = 0;
  double confidence = 0.95;
  Date asOf{};
  int intervalDays = 0;
  std::optional<Exposure> exposure;  // absent: whichever predicts better
  std::vector<FleetToolInput> tools;
};

struct FleetToolResult {
  std::string tool;
  FleetOutlook outlook;  // as of asOf
  double probabilityWithin = 0;
  std::optional<Date> crossingDate;  // within 20 years of asOf
  Date dueDate{};
  DriftResult own;  // the tool's own regression
};

struct FleetResult {
  Fleet fleet;
  std::string assumption;  // empty when estimated
  Interval groupSlopeInterval;
  std::vector<FleetToolResult> tools;
};

// REQUIRES nothing: problems name the field as the JSON does. Checks are sorted.
Result<FleetResult> evaluateFleet(const FleetInput& input);

}  // namespace steadyturn
