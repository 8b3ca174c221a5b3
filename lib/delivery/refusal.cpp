#include <fmt/format.h>

#include "choose.h"

namespace steadyturn {

namespace {

std::string_view reasonFor(RefusalKind kind) {
  switch (kind) {
    case RefusalKind::Retired:
      return "retired";
    case RefusalKind::Held:
      return "on hold";
    case RefusalKind::Overdue:
      return "overdue for its check";
    case RefusalKind::NoCheck:
      return "no check on record";
    case RefusalKind::FailedLastCheck:
      return "failed its last check";
    case RefusalKind::OutOfRange:
      return "out of range";
    case RefusalKind::NotSettable:
      return "has no scale: set it at the bench against the reference first";
    case RefusalKind::PartLimitRisk:
      return "cannot reach the window without endangering the part";
  }
  return "refused";
}

}  // namespace

std::string writeRefusal(const Refusal& refusal) {
  if (refusal.detail.empty()) return std::string(reasonFor(refusal.kind));
  return fmt::format("{} ({})", reasonFor(refusal.kind), refusal.detail);
}

}  // namespace steadyturn
