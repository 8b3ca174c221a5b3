// Due work of an invented depot on Sunday 2026-03-15 and after.
#pragma once

#include "due_list.h"

namespace steadyturn::test {

inline Date on(const char* date) { return parseDate(date, "date").value(); }

inline StatedTorque newtonMetres(double value) { return {value, Unit::NewtonMetre}; }

inline DueWork byDate(const char* tool, const char* due) {
  return {.tool = tool,
          .description = "Wheel bay, long handle",
          .due = on(due),
          .reason = DueReason::Interval,
          .intervalDays = 365,
          .lastCheck = on(due) - std::chrono::days(365),
          .setPoints = {newtonMetres(20), newtonMetres(60), newtonMetres(100)},
          .readings = 5};
}

inline DueWork byDrift(const char* tool, const char* due) {
  auto work = byDate(tool, due);
  work.reason = DueReason::Drift;
  work.deciding = newtonMetres(60);
  work.limitPercent = 4;
  return work;
}

inline DueWork neverChecked(const char* tool) {
  auto work = byDate(tool, "2026-01-01");
  work.reason = DueReason::NeverChecked;
  work.due.reset();
  work.lastCheck.reset();
  return work;
}

}  // namespace steadyturn::test
