// The material of papers about many tools at once: due work as a list and as a calendar, labels. Dates come in as
// values; a shop's own troubles come back as they are.
#pragma once

#include <string>
#include <vector>

#include "calendar_file.h"
#include "due_list.h"
#include "labels.h"
#include "shop.h"

namespace steadyturn {

// What is due up to `withinDays` after `asOf`, what is overdue and what failed included.
Result<DueListData> dueListOf(const Shop& shop, Date asOf, int withinDays);
Result<CalendarData> dueCalendarOf(const Shop& shop, Date asOf, int withinDays, std::chrono::sys_seconds written);

// Of the tools named, in that order (NotFound, field "tool", for one that is not there); of every tool in use where
// none is named.
Result<std::vector<ToolLabel>> labelsOf(const Shop& shop, const std::vector<std::string>& tools);

}  // namespace steadyturn
