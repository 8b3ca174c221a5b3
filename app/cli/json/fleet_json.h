// `sturn evaluate fleet`: its document in and out. The contract is app/cli/evaluate/FLEET.md.
#pragma once

#include "evaluate_fleet.h"
#include "json_document.h"

namespace steadyturn {

Result<FleetInput> readFleetInput(const Json& document);
OrderedJson fleetResultJson(const FleetResult& result);

// What the group's model says, without its tools.
OrderedJson fleetModelJson(const Fleet& fleet, const std::string& assumption);
std::string_view slopePer(Exposure exposure);  // "year", "5000 tightenings"
OrderedJson exposureScoresJson(const ExposureScores& scores);
// Of one tool on a day.
OrderedJson fleetOutlookJson(const FleetOutlook& outlook);

}  // namespace steadyturn
