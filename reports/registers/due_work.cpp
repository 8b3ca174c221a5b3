#include "due_work.h"

#include <fmt/format.h>

#include <algorithm>

namespace steadyturn {

Date endOfWeek(Date today) {
  return today + std::chrono::days(7 - static_cast<int>(std::chrono::weekday(today).iso_encoding()));
}

Date endOfMonth(Date today) {
  const std::chrono::year_month_day day(today);
  return day.year() / day.month() / std::chrono::last;
}

DueWhen dueWhen(const DueWork& work, Date today) {
  const bool atOnce = work.reason == DueReason::NeverChecked || work.reason == DueReason::Failed;
  if (atOnce || !work.due || *work.due < today) return DueWhen::Now;
  if (*work.due <= endOfWeek(today)) return DueWhen::ThisWeek;
  if (*work.due <= endOfMonth(today)) return DueWhen::ThisMonth;
  return DueWhen::Later;
}

std::string whyDueWords(const DueWork& work) {
  switch (work.reason) {
    case DueReason::NeverChecked:
      return "never checked";
    case DueReason::Failed:
      return "failed its last check";
    case DueReason::Interval:
      return work.intervalDays ? fmt::format("by date: {} days after its last check", *work.intervalDays)
                               : "by date: its interval ends";
    case DueReason::Drift:
      break;
  }
  return fmt::format("by drift: {}it could be found outside ±{} %",
                     work.deciding ? fmt::format("at {} ", writeTorque(*work.deciding)) : "",
                     writeRounded(work.limitPercent));
}

std::string setPointsWords(const DueWork& work) {
  if (work.setPoints.empty()) return {};
  const Unit unit = work.setPoints.front().unit;
  const bool oneUnit = std::ranges::all_of(work.setPoints, [unit](const auto& point) { return point.unit == unit; });
  std::vector<std::string> values;
  for (const auto& point : work.setPoints) values.push_back(oneUnit ? writeRounded(point.value) : writeTorque(point));
  auto words = fmt::format("{}", fmt::join(values, ", "));
  if (oneUnit) words += fmt::format(" {}", unitSign(unit));
  if (work.readings > 0) words += fmt::format(", {} readings{}", work.readings, values.size() > 1 ? " each" : "");
  return words;
}

}  // namespace steadyturn
