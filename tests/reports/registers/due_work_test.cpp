#include "due_work.h"

#include <gtest/gtest.h>

#include "demo_work.h"

namespace steadyturn {
namespace {

using test::byDate;
using test::on;

// Weeks of ISO 8601 run from Monday to Sunday. Days of the week from `cal` (util-linux): 2026-03-09 and 2026-03-16
// are Mondays, 2026-03-15 a Sunday, 2024-02-26 a Monday.
TEST(DueWork, WeekEndsOnItsSunday) {
  EXPECT_EQ(endOfWeek(on("2026-03-09")), on("2026-03-15"));
  EXPECT_EQ(endOfWeek(on("2026-03-15")), on("2026-03-15"));
  EXPECT_EQ(endOfWeek(on("2026-03-16")), on("2026-03-22"));
  EXPECT_EQ(endOfWeek(on("2024-02-26")), on("2024-03-03"));
}

TEST(DueWork, MonthEndsOnItsLastDay) {
  EXPECT_EQ(endOfMonth(on("2026-03-09")), on("2026-03-31"));
  EXPECT_EQ(endOfMonth(on("2024-02-01")), on("2024-02-29"));
  EXPECT_EQ(endOfMonth(on("2100-02-28")), on("2100-02-28"));  // no leap year: divisible by 100, not by 400
}

TEST(DueWork, FallsIntoOneOfFourTimes) {
  const auto today = on("2026-03-11");  // a Wednesday
  const auto when = [&](const char* due) { return dueWhen(byDate("W", due), today); };
  EXPECT_EQ(when("2026-03-10"), DueWhen::Now);
  EXPECT_EQ(when("2026-03-11"), DueWhen::ThisWeek);
  EXPECT_EQ(when("2026-03-15"), DueWhen::ThisWeek);
  EXPECT_EQ(when("2026-03-16"), DueWhen::ThisMonth);
  EXPECT_EQ(when("2026-03-31"), DueWhen::ThisMonth);
  EXPECT_EQ(when("2026-04-01"), DueWhen::Later);
  EXPECT_EQ(dueWhen(test::neverChecked("W"), today), DueWhen::Now);
  auto failed = byDate("W", "2027-01-01");
  failed.reason = DueReason::Failed;
  EXPECT_EQ(dueWhen(failed, today), DueWhen::Now);
}

TEST(DueWork, WeekThatRunsIntoTheNextMonthIsThisWeek) {
  EXPECT_EQ(dueWhen(byDate("W", "2026-04-05"), on("2026-03-31")), DueWhen::ThisWeek);
  EXPECT_EQ(dueWhen(byDate("W", "2026-04-06"), on("2026-03-31")), DueWhen::Later);
}

TEST(DueWork, SaysWhy) {
  EXPECT_EQ(whyDueWords(byDate("W", "2026-04-05")), "by date: 365 days after its last check");
  EXPECT_EQ(whyDueWords(test::byDrift("W", "2026-04-05")), "by drift: at 60 N·m it could be found outside ±4 %");
  EXPECT_EQ(whyDueWords(test::neverChecked("W")), "never checked");
  EXPECT_EQ(whyDueWords({.reason = DueReason::Failed}), "failed its last check");
}

TEST(DueWork, SaysWhatToCheck) {
  EXPECT_EQ(setPointsWords(byDate("W", "2026-04-05")), "20, 60, 100 N·m, 5 readings each");
  EXPECT_EQ(setPointsWords({.setPoints = {{15, Unit::PoundForceFoot}}, .readings = 10}), "15 lbf·ft, 10 readings");
  EXPECT_EQ(setPointsWords({.setPoints = {{15, Unit::PoundForceFoot}, {60, Unit::NewtonMetre}}}),
            "15 lbf·ft, 60 N·m");
  EXPECT_EQ(setPointsWords({}), "");
}

}  // namespace
}  // namespace steadyturn
