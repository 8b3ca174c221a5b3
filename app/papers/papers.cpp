#include "papers.h"

#include <map>

namespace steadyturn {

Result<DueListData> dueListOf(const Shop& shop, Date asOf, int withinDays) {
  auto work = shop.dueWork(asOf, asOf + std::chrono::days(withinDays));
  if (!work) return tl::unexpected(work.error());
  const auto facts = shop.facts();
  return DueListData{.shopName = facts.name,
                     .shopPlace = facts.place,
                     .today = asOf,
                     .confidence = shop.policy().confidence,
                     .work = std::move(*work)};
}

Result<CalendarData> dueCalendarOf(const Shop& shop, Date asOf, int withinDays, std::chrono::sys_seconds written) {
  auto work = shop.dueWork(asOf, asOf + std::chrono::days(withinDays));
  if (!work) return tl::unexpected(work.error());
  return CalendarData{
      .shopId = shop.id(), .shopName = shop.facts().name, .written = written, .work = std::move(*work)};
}

Result<std::vector<ToolLabel>> labelsOf(const Shop& shop, const std::vector<std::string>& tools) {
  const auto rows = shop.overview(shop.today());
  if (!rows) return tl::unexpected(rows.error());
  std::map<std::string, const ToolOverview*> byMark;
  for (const ToolOverview& row : *rows) byMark.emplace(row.tool.id, &row);
  std::vector<ToolLabel> labels;
  const auto add = [&labels](const ToolOverview& row) {
    labels.push_back({.tool = row.tool.id,
                      .description = row.tool.description,
                      .lastCheck = row.lastCheck,
                      .dueDate = row.dueDate,
                      .state = std::string(writeStanding(row.standing))});
  };
  for (const std::string& mark : tools) {
    const auto found = byMark.find(mark);
    if (found == byMark.end()) {
      return refuse({.kind = ProblemKind::NotFound,
                     .field = "tool",
                     .found = mark,
                     .accepted = "a tool of this shop; list them, or add it first"});
    }
    add(*found->second);
  }
  if (!tools.empty()) return labels;
  for (const ToolOverview& row : *rows) {
    if (row.standing != Standing::Retired) add(row);
  }
  return labels;
}

}  // namespace steadyturn
