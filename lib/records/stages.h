// The steps in which a fastener is tightened: a torque first, then torques or angles, in order.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "torque.h"

namespace steadyturn {

struct TighteningStage {
  double value = 0;    // a torque in the fastener's unit, or degrees
  bool angle = false;  // turned on by degrees
  bool operator==(const TighteningStage&) const = default;
};
using TighteningStages = std::vector<TighteningStage>;

// "30;60;90deg".
std::string writeStages(const TighteningStages& stages);
// Reads it as people type it: "30; 60; 90 deg", "30+60+90°". Empty text: none. Each above 0, the first a torque.
Result<TighteningStages> parseStages(std::string_view typed, std::string_view field);
// "30 N·m", "turn by 90°".
std::string stageInWords(const TighteningStage& stage, Unit unit);

}  // namespace steadyturn
