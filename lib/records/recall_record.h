// What was decided about the tightenings that a failed check put in doubt.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

#include "date.h"
#include "problem.h"

namespace steadyturn {

enum class RecallAction { Accept, Retorque, ReplacePart };
inline constexpr std::array allRecallActions{RecallAction::Accept, RecallAction::Retorque, RecallAction::ReplacePart};
std::string_view writeRecallAction(RecallAction action);  // "accept", "re-torque", "replace-part"
Result<RecallAction> parseRecallAction(std::string_view typed);

// The newest decision about a tightening counts; the earlier ones stay on record.
struct RecallDecision {
  std::int64_t failedCheck = 0;
  std::int64_t tightening = 0;
  RecallAction action = RecallAction::Accept;
  std::string reason;  // why it may stay as it is; what was done instead
  Date date{};
  std::string by;
};

// Every tightening in doubt has been decided, and somebody stands for it.
struct RecallClosing {
  std::int64_t failedCheck = 0;
  int tightenings = 0;  // decided
  Date date{};
  std::string by;
  std::string note;
};

}  // namespace steadyturn
