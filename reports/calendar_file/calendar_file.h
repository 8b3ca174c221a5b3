// Due work as an iCalendar file (RFC 5545), so that it stands in whatever calendar people look at.
#pragma once

#include <chrono>
#include <string>
#include <vector>

#include "due_work.h"
#include "problem.h"

namespace steadyturn {

struct CalendarData {
  // Tells this shop's tools from every other shop's and never changes: the right half of each UID, so that a newer
  // file moves the events of an older one instead of doubling them.
  std::string shopId{};
  std::string shopName{};
  std::chrono::sys_seconds written{};  // UTC
  std::vector<DueWork> work{};         // each tool once
};

// One event a tool, lasting the whole of its due day and leaving the day free; what was never checked or failed its
// last check stands on the day of writing, since it is due now. Events come in the order given. Refused (NotFound,
// field "due") when there is no work: RFC 5545, 3.6 wants at least one component in a file. REQUIRES: texts UTF-8,
// shopId not empty.
Result<std::string> writeCalendar(const CalendarData& data);

}  // namespace steadyturn
