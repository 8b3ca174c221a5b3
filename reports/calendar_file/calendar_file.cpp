#include "calendar_file.h"

#include <fmt/format.h>

#include <string_view>

#include "content_line.h"

namespace steadyturn {
namespace {

std::string basicDate(Date date) {
  const std::chrono::year_month_day day(date);
  return fmt::format("{:04}{:02}{:02}", static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                     static_cast<unsigned>(day.day()));
}

std::string basicInstant(std::chrono::sys_seconds instant) {
  const auto day = std::chrono::floor<std::chrono::days>(instant);
  const std::chrono::hh_mm_ss time(instant - day);
  return fmt::format("{}T{:02}{:02}{:02}Z", basicDate(day), time.hours().count(), time.minutes().count(),
                     time.seconds().count());
}

Date dayOf(const DueWork& work, const CalendarData& data) {
  const auto today = std::chrono::floor<std::chrono::days>(data.written);
  const bool atOnce = work.reason == DueReason::NeverChecked || work.reason == DueReason::Failed;
  return atOnce ? today : work.due.value_or(today);
}

std::string_view category(DueReason reason) {
  switch (reason) {
    case DueReason::NeverChecked:
      return "never checked";
    case DueReason::Failed:
      return "failed";
    case DueReason::Interval:
      return "due by date";
    case DueReason::Drift:
      return "due by drift";
  }
  return {};
}

std::string summary(const DueWork& work) {
  return work.description.empty() ? fmt::format("Check {}", work.tool)
                                  : fmt::format("Check {}: {}", work.tool, work.description);
}

std::string description(const DueWork& work, const CalendarData& data) {
  auto words = fmt::format("Why due: {}", whyDueWords(work));
  if (work.lastCheck) words += fmt::format("\nLast check: {}", writeDate(*work.lastCheck));
  if (!work.setPoints.empty()) words += fmt::format("\nSet-points to check: {}", setPointsWords(work));
  if (!data.shopName.empty()) words += fmt::format("\n{}", data.shopName);
  return words;
}

class Lines {
 public:
  void add(std::string_view name, std::string_view value) { text_ += contentLine(fmt::format("{}:{}", name, value)); }
  void addText(std::string_view name, std::string_view text) { add(name, escapeText(text)); }
  std::string text() && { return std::move(text_); }

 private:
  std::string text_;
};

void addEvent(Lines& lines, const DueWork& work, const CalendarData& data) {
  lines.add("BEGIN", "VEVENT");
  lines.addText("UID", fmt::format("due-{}@{}", work.tool, data.shopId));
  lines.add("DTSTAMP", basicInstant(data.written));
  // A date without DTEND is that one day (RFC 5545, 3.6.1).
  lines.add("DTSTART;VALUE=DATE", basicDate(dayOf(work, data)));
  lines.addText("SUMMARY", summary(work));
  lines.addText("DESCRIPTION", description(work, data));
  lines.add("CATEGORIES", fmt::format("torque tool check,{}", category(work.reason)));
  lines.add("TRANSP", "TRANSPARENT");
  lines.add("END", "VEVENT");
}

}  // namespace

Result<std::string> writeCalendar(const CalendarData& data) {
  if (data.work.empty()) {
    return refuse({.kind = ProblemKind::NotFound,
                   .field = "due",
                   .found = "no tool due",
                   .accepted = "a later day; a calendar file holds at least one event"});
  }
  Lines lines;
  lines.add("BEGIN", "VCALENDAR");
  lines.add("VERSION", "2.0");
  lines.add("PRODID", "-//Steadyturn//Due work//EN");
  for (const auto& work : data.work) addEvent(lines, work, data);
  lines.add("END", "VCALENDAR");
  return std::move(lines).text();
}

}  // namespace steadyturn
