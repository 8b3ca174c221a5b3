// A limit for a plastic part from a trial, where the part's own data have none. It is a proposal: the maker's data
// come first, and it becomes the part's limit only as a revision that a second person approves.
#pragma once

#include "part_limit.h"
#include "records.h"

namespace steadyturn {

// In the fastener's unit. Refused where a limit of the part's own data is on record, and where the target passes it.
Result<LimitProposal> proposeLimit(const Fastener& fastener, TrialKind kind, StatedTorque trial);
// As the revision has it: the limit, and where it comes from.
void takeOver(Fastener& fastener, const LimitProposal& proposal);

inline constexpr std::string_view limitByTrialReason = "a limit proposed by trial";  // why the specification changes
inline constexpr std::string_view limitIsAProposal =
    "This is a proposal and not the maker's value: look for the part's own data first.";

}  // namespace steadyturn
