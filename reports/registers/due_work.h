// A tool's next check as work to be done: when, why, and what to check.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "date.h"
#include "torque.h"

namespace steadyturn {

enum class DueReason {
  NeverChecked,
  Failed,    // its last check found it outside
  Interval,  // so many days after the last check
  Drift      // the prediction interval leaves the limits before the interval ends
};

struct DueWork {
  std::string tool{}, description{};
  std::optional<Date> due{};  // absent: never checked
  DueReason reason = DueReason::Interval;
  std::optional<int> intervalDays{};       // for Interval
  std::optional<StatedTorque> deciding{};  // for Drift: the set-point that leaves first
  double limitPercent = 0;                 // for Drift, ±
  std::optional<Date> lastCheck{};
  std::vector<StatedTorque> setPoints{};  // to be checked, rising
  int readings = 0;                       // at each; 0: not known
};

// When it falls to the bench. Weeks are those of ISO 8601, Monday to Sunday; months those of the calendar.
enum class DueWhen {
  Now,        // overdue, failed or never checked
  ThisWeek,   // from today to Sunday
  ThisMonth,  // after that, to the month's last day
  Later
};
DueWhen dueWhen(const DueWork& work, Date today);
Date endOfWeek(Date today);
Date endOfMonth(Date today);

// "by date: 365 days after its last check", "by drift: at 60 N·m it could be found outside ±4 %", …
std::string whyDueWords(const DueWork& work);
// "20, 60, 100 N·m, 5 readings each".
std::string setPointsWords(const DueWork& work);

}  // namespace steadyturn
