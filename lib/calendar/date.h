// Plain calendar dates (ISO 8601, UTC). No clock: today's date comes in as a value.
#pragma once

#include <chrono>
#include <string>
#include <string_view>

#include "problem.h"

namespace steadyturn {

using Date = std::chrono::sys_days;

// Reads "2026-03-14"; refuses a date that does not exist. `field` names it in the problem.
Result<Date> parseDate(std::string_view typed, std::string_view field);

// "2026-03-14".
std::string writeDate(Date date);

// Days between two dates, in years of 365.25 days (the project's convention for every rate per year).
inline constexpr double daysPerYear = 365.25;
double yearsBetween(Date from, Date to);

// The same day so many months on; 31 January + 1 month is the last day of February.
Date addMonths(Date date, int months);

}  // namespace steadyturn
