// Restricted maximum likelihood (REML) of the fleet's two variances, profiled down to their ratio: a search in one
// dimension whose every step costs a few operations a tool.
#pragma once

#include <optional>
#include <span>

#include "slope_sums.h"

namespace steadyturn {

// Variances of the fleet: of the tools' slopes about the group's, and of one check about its tool's line.
struct FleetVariances {
  double slope = 0;
  double residual = 0;
};

struct RestrictedFit {
  FleetVariances variances;
  double logLikelihood = 0;  // restricted, as R's logLik(…, REML = TRUE) counts it
};

// Absent when the record can't tell both variances: fewer than three tools that speak of a slope, no difference
// left beside their own slopes, or no scatter at all.
std::optional<RestrictedFit> fitRestricted(std::span<const SlopeSums> tools);

}  // namespace steadyturn
