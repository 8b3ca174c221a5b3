#include "calendar_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>

namespace steadyturn {
namespace {

using testing::HasSubstr;
using testing::Not;

Date on(const char* date) { return parseDate(date, "date").value(); }

CalendarData demoCalendar() {
  using namespace std::chrono_literals;
  return {.shopId = "7b1d6a52-depot-north",
          .shopName = "Depot North",
          .written = on("2026-03-15") + 8h + 5min + 9s,
          .work = {{.tool = "W06",
                    .description = "Wheel bay; long handle, \"the good one\" \\ blue",
                    .due = on("2026-04-01"),
                    .reason = DueReason::Drift,
                    .deciding = StatedTorque{60, Unit::NewtonMetre},
                    .limitPercent = 4,
                    .lastCheck = on("2025-06-03"),
                    .setPoints = {{20, Unit::NewtonMetre}, {60, Unit::NewtonMetre}, {100, Unit::NewtonMetre}},
                    .readings = 5},
                   {.tool = "W07",
                    .description = {},
                    .due = on("2026-12-31"),
                    .reason = DueReason::Interval,
                    .intervalDays = 365,
                    .lastCheck = on("2025-12-31")},
                   {.tool = "W08", .description = "Spare", .reason = DueReason::NeverChecked}}};
}

std::string calendar() { return writeCalendar(demoCalendar()).value(); }

// What another library makes of the file; fails the test where it finds a fault. Debian's own Python, since its
// packages are there.
std::string readByAnotherLibrary(const std::string& text) {
  const auto path = std::filesystem::path(testing::TempDir()) /
                    (std::string(testing::UnitTest::GetInstance()->current_test_info()->name()) + ".ics");
  std::ofstream(path, std::ios::binary) << text;
  const auto command =
      std::string("PYTHONIOENCODING=utf-8 /usr/bin/python3 ") + STEADYTURN_CALENDAR_READER + " " + path.string();
  std::FILE* pipe = popen(command.c_str(), "r");
  if (!pipe) return "python3 can't be run";
  std::string said;
  std::array<char, 4096> part{};
  while (const auto count = std::fread(part.data(), 1, part.size(), pipe)) said.append(part.data(), count);
  EXPECT_EQ(pclose(pipe), 0) << "needs Debian's python3-icalendar";
  std::filesystem::remove(path);
  return said;
}

TEST(CalendarFile, ReadsTheSameInAnotherLibrary) {
  EXPECT_EQ(readByAnotherLibrary(calendar()),
            "calendar|2.0|-//Steadyturn//Due work//EN\n"
            "UID|due-W06@7b1d6a52-depot-north\n"
            "DTSTAMP|2026-03-15T08:05:09+00:00\n"
            "DTSTART|date|2026-04-01\n"
            "SUMMARY|Check W06: Wheel bay; long handle, \"the good one\" \\ blue\n"
            "DESCRIPTION|'Why due: by drift: at 60 N·m it could be found outside ±4 %\\nLast check: 2025-06-03\\n"
            "Set-points to check: 20, 60, 100 N·m, 5 readings each\\nDepot North'\n"
            "CATEGORIES|torque tool check|due by drift\n"
            "TRANSP|TRANSPARENT\n"
            "UID|due-W07@7b1d6a52-depot-north\n"
            "DTSTAMP|2026-03-15T08:05:09+00:00\n"
            "DTSTART|date|2026-12-31\n"
            "SUMMARY|Check W07\n"
            "DESCRIPTION|'Why due: by date: 365 days after its last check\\nLast check: 2025-12-31\\nDepot North'\n"
            "CATEGORIES|torque tool check|due by date\n"
            "TRANSP|TRANSPARENT\n"
            "UID|due-W08@7b1d6a52-depot-north\n"
            "DTSTAMP|2026-03-15T08:05:09+00:00\n"
            "DTSTART|date|2026-03-15\n"
            "SUMMARY|Check W08: Spare\n"
            "DESCRIPTION|'Why due: never checked\\nDepot North'\n"
            "CATEGORIES|torque tool check|never checked\n"
            "TRANSP|TRANSPARENT\n");
}

// RFC 5545: 3.4 (BEGIN:VCALENDAR … END:VCALENDAR), 3.6 (PRODID and VERSION once each), 3.6.1 (UID and DTSTAMP once in
// each VEVENT), 3.1 (CRLF and nothing else ends a line).
TEST(CalendarFile, KeepsTheStandardsFrame) {
  const auto text = calendar();
  EXPECT_TRUE(text.starts_with("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:"));
  EXPECT_TRUE(text.ends_with("END:VEVENT\r\nEND:VCALENDAR\r\n"));
  const auto count = [&](std::string_view what) {
    int found = 0;
    for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++found;
    return found;
  };
  EXPECT_EQ(count("\r\nPRODID:"), 1);
  for (const char* once :
       {"\r\nBEGIN:VEVENT\r\n", "\r\nUID:", "\r\nDTSTAMP:", "\r\nDTSTART;VALUE=DATE:", "\r\nEND:VEVENT\r\n"}) {
    EXPECT_EQ(count(once), 3) << once;
  }
  EXPECT_EQ(count("\n"), count("\r\n"));
  EXPECT_EQ(count("\r"), count("\r\n"));
  EXPECT_THAT(text, HasSubstr("DTSTAMP:20260315T080509Z\r\n"));
  EXPECT_THAT(text, HasSubstr("DTSTART;VALUE=DATE:20260401\r\n"));
}

// RFC 5545, 3.8.4.7: a UID stays with its event; 3.8.7.2: without METHOD, DTSTAMP is when the event was last revised.
TEST(CalendarFile, NewerFileMovesTheSameEvents) {
  auto later = demoCalendar();
  later.written += std::chrono::days(20);
  later.work[0].due = on("2027-02-01");
  const auto text = writeCalendar(later).value();
  EXPECT_THAT(text, HasSubstr("UID:due-W06@7b1d6a52-depot-north\r\n"));
  EXPECT_THAT(text, HasSubstr("DTSTART;VALUE=DATE:20270201\r\n"));
  EXPECT_THAT(text, HasSubstr("DTSTAMP:20260404T080509Z\r\n"));
}

TEST(CalendarFile, FailedToolStandsOnTheDayOfWriting) {
  auto data = demoCalendar();
  data.work = {{.tool = "W09", .description = "Failed", .due = on("2027-01-01"), .reason = DueReason::Failed}};
  const auto text = writeCalendar(data).value();
  EXPECT_THAT(text, HasSubstr("DTSTART;VALUE=DATE:20260315\r\n"));
  EXPECT_THAT(text, HasSubstr("CATEGORIES:torque tool check,failed\r\n"));
}

TEST(CalendarFile, NothingInATextCanMakeALineOfItsOwn) {
  auto data = demoCalendar();
  data.work = {{.tool = "W1\r\nATTACH:http://example.org",
                .description = "x\nEND:VEVENT\r\nBEGIN:VEVENT",
                .due = on("2026-04-01")}};
  const auto text = writeCalendar(data).value();
  EXPECT_THAT(text, Not(HasSubstr("\nATTACH")));
  EXPECT_THAT(readByAnotherLibrary(text), HasSubstr("DTSTART|date|2026-04-01\n"));
}

// RFC 5545, 3.6: icalbody has at least one component.
TEST(CalendarFile, RefusesToWriteAnEmptyOne) {
  auto data = demoCalendar();
  data.work.clear();
  const auto written = writeCalendar(data);
  ASSERT_FALSE(written);
  EXPECT_EQ(written.error().front().kind, ProblemKind::NotFound);
  EXPECT_EQ(written.error().front().field, "due");
}

}  // namespace
}  // namespace steadyturn
