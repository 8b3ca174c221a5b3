#include "recall_record.h"

namespace steadyturn {

std::string_view writeRecallAction(RecallAction action) {
  switch (action) {
    case RecallAction::Accept:
      return "accept";
    case RecallAction::Retorque:
      return "re-torque";
    case RecallAction::ReplacePart:
      return "replace-part";
  }
  return "";
}

Result<RecallAction> parseRecallAction(std::string_view typed) {
  for (const auto action : allRecallActions) {
    if (typed == writeRecallAction(action)) return action;
  }
  return refuse({.field = "action", .found = std::string(typed), .accepted = "accept, re-torque or replace-part"});
}

}  // namespace steadyturn
