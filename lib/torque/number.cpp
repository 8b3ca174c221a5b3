#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <system_error>

#include "torque.h"

namespace steadyturn {
namespace {

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view blanks = " \t\r\n";
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

std::size_t takeDigits(std::string_view& text) {
  const std::size_t count = std::min(text.find_first_not_of("0123456789"), text.size());
  text.remove_prefix(count);
  return count;
}

bool takeAnyOf(std::string_view& text, std::string_view characters) {
  if (text.empty() || characters.find(text.front()) == std::string_view::npos) return false;
  text.remove_prefix(1);
  return true;
}

bool isDecimal(std::string_view text, std::string_view point) {
  takeAnyOf(text, "+-");
  std::size_t digits = takeDigits(text);
  if (takeAnyOf(text, point)) digits += takeDigits(text);
  if (digits == 0) return false;
  if (takeAnyOf(text, "eE")) {
    takeAnyOf(text, "+-");
    if (takeDigits(text) == 0) return false;
  }
  return text.empty();
}

Problem notANumber(std::string_view typed, std::string_view field, std::string_view accepted) {
  return {.field = std::string(field), .found = std::string(typed), .accepted = std::string(accepted)};
}

template <typename... Format>
std::string written(double value, Format... format) {
  // The longest: a fixed double of 309 digits before the point or 1074 after it.
  std::array<char, 1500> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), value, format...).ptr;
  return std::string(text.data(), end);
}

}  // namespace

Result<double> parseNumber(std::string_view typed, std::string_view field, bool decimalComma) {
  const std::string_view example = decimalComma ? "a decimal number such as 12,5" : "a decimal number such as 12.5";
  std::string text(trimmed(typed));
  // from_chars would take "inf", "nan" and a number's beginning, so the shape is looked at first.
  if (!isDecimal(text, decimalComma ? "," : ".")) return refuse(notANumber(typed, field, example));
  std::ranges::replace(text, ',', '.');
  if (text.starts_with('+')) text.erase(0, 1);

  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size() || !std::isfinite(value)) {
    return refuse(notANumber(typed, field, "a number between 1e-307 and 1e308 in size"));
  }
  return value;
}

Result<double> parseTorqueNumber(std::string_view typed, std::string_view field, bool decimalComma) {
  Result<double> number = parseNumber(typed, field, decimalComma);
  if (!number) return number;
  if (*number < 0) return refuse(notANumber(typed, field, "a torque of 0 or more"));
  return std::abs(*number);  // "-0" is zero
}

std::string writeNumber(double value) {
  std::string shortest = written(value);
  if (shortest.find('e') == std::string::npos || std::abs(value) < 1e-6) return shortest;
  constexpr std::size_t stillShort = 17;
  std::string fixed = written(value, std::chars_format::fixed);
  return fixed.size() <= stillShort ? fixed : shortest;
}

std::string writeRounded(double value, int significant) {
  const std::string digits = written(value, std::chars_format::scientific, std::max(significant, 1) - 1);
  double rounded = value;
  std::from_chars(digits.data(), digits.data() + digits.size(), rounded);
  if (rounded == 0) return "0";
  const double size = std::abs(rounded);
  const bool plain = size >= 1e-4 && size <= 1e9;
  return written(rounded, plain ? std::chars_format::fixed : std::chars_format::scientific);
}

}  // namespace steadyturn
