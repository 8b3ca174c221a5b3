#include "shop_views.h"

#include <algorithm>
#include <array>
#include <utility>

namespace steadyturn {

std::string_view writeStanding(Standing standing) {
  switch (standing) {
    case Standing::Retired:
      return "retired";
    case Standing::Held:
      return "held";
    case Standing::Failed:
      return "failed";
    case Standing::NeverChecked:
      return "never checked";
    case Standing::Overdue:
      return "overdue";
    case Standing::Leaving:
      return "leaving its limits";
    case Standing::DueSoon:
      return "due soon";
    case Standing::Ready:
      return "ready";
  }
  return {};
}

static constexpr std::array tableKinds{
    std::pair{TableKind::Tools, "tools"}, std::pair{TableKind::References, "references"},
    std::pair{TableKind::Fasteners, "fasteners"}, std::pair{TableKind::Checks, "checks"},
    std::pair{TableKind::Tightenings, "tightenings"}};

Result<TableKind> parseTableKind(std::string_view typed) {
  for (const auto& [kind, word] : tableKinds) {
    if (typed == word) return kind;
  }
  return refuse({.field = "kind",
                 .found = std::string(typed),
                 .accepted = "tools, references, fasteners, checks, tightenings"});
}

std::string_view writeTableKind(TableKind kind) {
  for (const auto& [one, word] : tableKinds) {
    if (one == kind) return word;
  }
  return {};
}

int RecallList::undecided() const {
  return static_cast<int>(
      std::ranges::count_if(tightenings, [](const RecallLine& entry) { return !entry.decision.has_value(); }));
}

}  // namespace steadyturn
