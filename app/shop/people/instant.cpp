#include "instant.h"

#include <charconv>

#include "date.h"

namespace steadyturn {

namespace {

std::optional<int> wholeIn(std::string_view text) {
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size() || value < 0) return std::nullopt;
  return value;
}

}  // namespace

std::optional<std::chrono::sys_time<std::chrono::milliseconds>> readInstant(std::string_view text) {
  constexpr std::string_view shape = "0000-00-00T00:00:00.000Z";
  if (text.size() != shape.size()) return std::nullopt;
  const auto day = parseDate(text.substr(0, 10), "instant");
  const auto hours = wholeIn(text.substr(11, 2));
  const auto minutes = wholeIn(text.substr(14, 2));
  const auto seconds = wholeIn(text.substr(17, 2));
  const auto thousandths = wholeIn(text.substr(20, 3));
  if (!day || !hours || !minutes || !seconds || !thousandths) return std::nullopt;
  return *day + std::chrono::hours(*hours) + std::chrono::minutes(*minutes) + std::chrono::seconds(*seconds) +
         std::chrono::milliseconds(*thousandths);
}

}  // namespace steadyturn
