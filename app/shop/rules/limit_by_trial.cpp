#include "shop_limit.h"

namespace steadyturn {

Result<LimitProposal> proposeLimit(const Fastener& fastener, TrialKind kind, StatedTorque trial) {
  if (fastener.partLimit && fastener.limitBasis.empty()) {
    return refuse({.kind = ProblemKind::Conflict,
                   .field = "part_limit",
                   .found = writeTorque({*fastener.partLimit, fastener.unit}) + " from the part's own data",
                   .accepted = "a fastener without a limit of its own; a trial does not replace it"});
  }
  return proposePartLimit(kind, trial, fastener.targetTorque());
}

void takeOver(Fastener& fastener, const LimitProposal& proposal) {
  fastener.partLimit = convert(proposal.limit, fastener.unit).value;
  fastener.limitBasis = proposal.basis;
}

}  // namespace steadyturn
