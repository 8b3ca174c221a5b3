#include "date.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <ctime>

namespace steadyturn {
namespace {

using namespace std::chrono;

TEST(Date, ReadsAndWritesIso8601) {
  EXPECT_EQ(parseDate("2026-03-14", "date"), Date(2026y / March / 14));
  EXPECT_EQ(parseDate("2024-02-29", "date"), Date(2024y / February / 29));
  EXPECT_EQ(writeDate(2026y / March / 14), "2026-03-14");
  EXPECT_EQ(writeDate(year(801) / January / 2), "0801-01-02");
}

TEST(Date, RefusesADateThatDoesNotExist) {
  for (const char* bad : {"2026-02-30", "2025-02-29", "1900-02-29", "2026-13-01", "2026-00-10", "2026-04-31",
                          "2026-01-00", "2026-1-1", "14.03.2026", "2026/03/14", "20260314", "2026-03-14T00:00",
                          "2026-03-1O", "-026-03-14", " 2026-03-14", "yesterday", ""}) {
    const Result<Date> date = parseDate(bad, "checks[0].date");
    ASSERT_FALSE(date) << bad;
    ASSERT_EQ(date.error().size(), 1u);
    EXPECT_EQ(date.error()[0].field, "checks[0].date");
    EXPECT_EQ(date.error()[0].found, bad);
    EXPECT_FALSE(date.error()[0].accepted.empty());
  }
}

// The C library's calendar is the second witness.
TEST(Date, EveryDayFrom1900To2100ReadsBackAndAgreesWithTheCLibrary) {
  for (Date day = 1900y / January / 1; day <= Date(2100y / December / 31); day += days(1)) {
    const std::string text = writeDate(day);
    const auto back = parseDate(text, "date");
    ASSERT_EQ(back, day) << text;
    const std::time_t seconds = std::time_t{day.time_since_epoch().count()} * 86400;
    std::tm broken{};
    char expected[16];
    ASSERT_NE(gmtime_r(&seconds, &broken), nullptr);
    ASSERT_GT(std::strftime(expected, sizeof expected, "%Y-%m-%d", &broken), 0u);
    ASSERT_EQ(text, expected);
  }
}

TEST(Date, AYearIs365AndAQuarterDays) {
  EXPECT_DOUBLE_EQ(yearsBetween(2023y / January / 1, 2024y / January / 1), 365 / 365.25);
  EXPECT_DOUBLE_EQ(yearsBetween(2021y / January / 1, 2025y / January / 1), 4);
  EXPECT_DOUBLE_EQ(yearsBetween(2025y / January / 1, 2021y / January / 1), -4);
  EXPECT_EQ(yearsBetween(2025y / January / 1, 2025y / January / 1), 0);
}

TEST(Date, AMonthOnClampsToTheMonthsEnd) {
  EXPECT_EQ(addMonths(2026y / January / 31, 1), Date(2026y / February / 28));
  EXPECT_EQ(addMonths(2024y / January / 31, 1), Date(2024y / February / 29));
  EXPECT_EQ(addMonths(2026y / March / 31, 1), Date(2026y / April / 30));
  EXPECT_EQ(addMonths(2026y / January / 15, 1), Date(2026y / February / 15));
  EXPECT_EQ(addMonths(2024y / February / 29, 12), Date(2025y / February / 28));
  EXPECT_EQ(addMonths(2026y / November / 30, 3), Date(2027y / February / 28));
  EXPECT_EQ(addMonths(2026y / March / 31, -1), Date(2026y / February / 28));
  EXPECT_EQ(addMonths(2026y / January / 31, -2), Date(2025y / November / 30));
  EXPECT_EQ(addMonths(2026y / January / 31, 0), Date(2026y / January / 31));
}

RC_GTEST_PROP(Date, AddedMonthsLandInTheMonthAskedForAndNeverOnALaterDay, ()) {
  const Date start = Date(1900y / January / 1) + days(*rc::gen::inRange(0, 73000));
  const int months = *rc::gen::inRange(-600, 600);
  const year_month_day from(start);
  const year_month_day to(addMonths(start, months));
  RC_ASSERT(to.year() / to.month() == from.year() / from.month() + std::chrono::months(months));
  RC_ASSERT(to.day() <= from.day());
  RC_ASSERT(to.day() == from.day() || to.day() == (to.year() / to.month() / last).day());
}

}  // namespace
}  // namespace steadyturn
