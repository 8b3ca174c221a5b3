#include "drift.h"

namespace steadyturn {

std::string_view writePhase(Phase phase) { return phase == Phase::AsFound ? "as_found" : "as_left"; }

Result<Phase> parsePhase(std::string_view typed) {
  for (const Phase phase : {Phase::AsFound, Phase::AsLeft}) {
    if (typed == writePhase(phase)) return phase;
  }
  return refuse({.field = "phase", .found = std::string(typed), .accepted = "as_found or as_left"});
}

std::string_view writeState(DriftState state) {
  switch (state) {
    case DriftState::Steady:
      return "steady";
    case DriftState::Drifting:
      return "drifting";
    case DriftState::Leaving:
      return "leaving";
    case DriftState::Unknown:
      return "unknown";
  }
  return "unknown";
}

}  // namespace steadyturn
