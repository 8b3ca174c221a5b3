#include <algorithm>

#include "inside.h"
#include "standing.h"
#include "walk_tools.h"

namespace steadyturn {

Result<ToolDrift> Shop::drift(const std::string& id, Date asOf) const {
  const auto found = tool(id);
  if (!found) return tl::unexpected(found.error());
  return guarded([&]() -> Result<ToolDrift> {
    return driftOf(*found, inside_->checks.summaries(id), inside_->fleetBook(asOf), asOf, inside_->policy());
  });
}

Result<std::vector<ToolOverview>> Shop::overview(Date asOf, const Progress& progress) const {
  return guarded([&]() -> Result<std::vector<ToolOverview>> {
    const auto policy = inside_->policy();
    const auto tools = inside_->tools.all();
    const auto all = inside_->checks.allSummaries();
    const auto& book = inside_->fleets.book(all, asOf, policy.confidence);
    std::vector<ToolOverview> rows;
    rows.reserve(tools.size());
    const bool whole = walkTools(tools, all, progress, [&](const Tool& tool, const std::vector<PointSummary>& own) {
      rows.push_back(overviewOf(driftOf(tool, own, book, asOf, policy), own, asOf));
    });
    if (!whole) return refuse({.kind = ProblemKind::Cancelled});
    return rows;
  });
}

Result<std::vector<ToolOverview>> Shop::due(Date asOf, Date until) const {
  auto rows = overview(asOf);
  if (!rows) return rows;
  std::erase_if(*rows, [until](const ToolOverview& row) {
    return row.standing == Standing::Retired ||
           (row.dueDate && *row.dueDate > until && row.standing != Standing::Failed);
  });
  // Never checked comes first: nothing is known about it.
  std::stable_sort(rows->begin(), rows->end(), [](const ToolOverview& a, const ToolOverview& b) {
    return a.dueDate.value_or(Date::min()) < b.dueDate.value_or(Date::min());
  });
  return rows;
}

}  // namespace steadyturn
