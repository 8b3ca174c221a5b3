#include "fleet_assumption.h"

#include <fmt/format.h>

#include <cmath>

namespace steadyturn {

FleetAssumption assumptionFor(double permittedPercent) {
  const double afterInterval = permittedPercent / 2;
  const double ofCheck = permittedPercent / 4 / 2;
  const double drift = afterInterval * afterInterval - 2 * ofCheck * ofCheck;
  return {.groupSlopeVariance = drift / 2, .variances = {.slope = drift / 2, .residual = ofCheck * ofCheck}};
}

std::string assumptionText(double permittedPercent) {
  const auto assumed = assumptionFor(permittedPercent);
  const double drift = std::sqrt(assumed.groupSlopeVariance + assumed.variances.slope);
  return fmt::format(
      "Assumed, for want of a record (common practice after ISO 6789: 95 % of tools still within ±{:.3g} % after 12 "
      "months or {:.0f} tightenings): drifts scatter by {:.2g} % in that interval, checks by {:.2g} %.",
      permittedPercent, tighteningsPerInterval, drift, std::sqrt(assumed.variances.residual));
}

}  // namespace steadyturn
