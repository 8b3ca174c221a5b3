#include "date.h"

#include <fmt/core.h>

#include <algorithm>
#include <cstddef>

namespace steadyturn {
namespace {

bool isDigit(char character) { return character >= '0' && character <= '9'; }

bool looksLikeDate(std::string_view text) {
  constexpr std::string_view shape = "dddd-dd-dd";
  return std::ranges::equal(text, shape,
                            [](char found, char wanted) { return wanted == 'd' ? isDigit(found) : found == wanted; });
}

unsigned number(std::string_view digits) {
  unsigned value = 0;
  for (char digit : digits) value = value * 10 + static_cast<unsigned>(digit - '0');
  return value;
}

}  // namespace

Result<Date> parseDate(std::string_view typed, std::string_view field) {
  const auto no = [&](std::string_view accepted) {
    return refuse({.field = std::string(field), .found = std::string(typed), .accepted = std::string(accepted)});
  };
  if (!looksLikeDate(typed)) return no("a date such as 2026-03-14");
  const std::chrono::year_month_day day{std::chrono::year(static_cast<int>(number(typed.substr(0, 4)))),
                                        std::chrono::month(number(typed.substr(5, 2))),
                                        std::chrono::day(number(typed.substr(8, 2)))};
  if (!day.ok()) return no("a date that exists, such as 2026-03-14");
  return Date(day);
}

std::string writeDate(Date date) {
  const std::chrono::year_month_day day(date);
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                     static_cast<unsigned>(day.day()));
}

double yearsBetween(Date from, Date to) { return static_cast<double>((to - from).count()) / daysPerYear; }

Date addMonths(Date date, int months) {
  const std::chrono::year_month_day moved = std::chrono::year_month_day(date) + std::chrono::months(months);
  if (moved.ok()) return moved;
  return moved.year() / moved.month() / std::chrono::last;
}

}  // namespace steadyturn
