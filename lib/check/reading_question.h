// A reading that looks like another unit or a slip of the keys. It is questioned, never changed: what was typed
// stands until the person who typed it says otherwise.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "torque.h"

namespace steadyturn {

enum class QuestionKind {
  ReadInOtherUnit,  // the number is right, in another unit
  SetInOtherUnit,   // the reading is right; the tool was set to the target's number in another unit
  ShiftedPoint,     // 10 times or a tenth
  LostDigit,
  DoubledDigit
};

struct ReadingQuestion {
  QuestionKind kind;
  StatedTorque wouldBe;  // SetInOtherUnit: the reading in that unit; else in the target's unit
  std::string text;      // "19.8 N·m would be 14.6 lbf·ft"
};

// What the text typed as one reading (in the target's unit, '.' or ',' as decimal mark) may have been meant to be.
// Nothing is asked within 4 × limit of the target, nor of a number that isn't one; nothing is offered that is not
// itself within 1.5 × limit. Where two or more other readings of the set-point are there, a slip is also measured at
// their median: a tool far out is no slip. The two multiples are common practice, no source: far enough out that no
// tool in use gets there, near enough that chance does not.
// REQUIRES: target.value > 0, limitPercent > 0.
std::optional<ReadingQuestion> questionReading(std::string_view typed, StatedTorque target,
                                               std::span<const double> otherReadings, double limitPercent);

}  // namespace steadyturn
