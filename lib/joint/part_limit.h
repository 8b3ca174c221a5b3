// A limit for a thread in plastic where the part's own data have none: a proposal from published practice, never the
// maker's value.
#pragma once

#include <string>
#include <string_view>

#include "torque.h"

namespace steadyturn {

// What was found by trial on parts of the same kind: the torque that drives the screw in, or the one that strips it.
enum class TrialKind { Driving, Stripping };

struct LimitProposal {
  StatedTorque limit;
  std::string basis;  // to be kept beside it, with its source
};

// Design guides for screws in plastic want a stripping torque of at least twice the driving torque, and tightening to
// at most half to 70 % of the stripping torque (common practice). So: 70 % of the stripping torque; where only
// driving is known, of twice the driving torque. Refuses a trial of 0, and a target that already passes the proposal.
inline constexpr std::string_view limitPractice =
    "70 % of the torque that strips the thread; where only the torque that drives the screw in is known, of twice "
    "that (design practice for screws in plastic)";
Result<LimitProposal> proposePartLimit(TrialKind kind, StatedTorque trial, StatedTorque target);

}  // namespace steadyturn
