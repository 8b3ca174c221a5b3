// From a tool's history to a candidate for a fastener.
#pragma once

#include "choose.h"
#include "shop_views.h"

namespace steadyturn {

// REQUIRES: drift and overview of the same tool and day.
Candidate candidateOf(const ToolDrift& drift, const ToolOverview& overview);

Demand demandOf(const Fastener& fastener, const std::optional<Adapter>& adapter, double partLimitRisk);

// Does the tool's range reach any part of the demand's window? Spares reading the history of tools that can't serve.
bool inRange(const Tool& tool, const Demand& demand);
std::string rangeInWords(const Tool& tool);  // "20 to 100 N·m"

}  // namespace steadyturn
