#include "typed_values.h"

#include <cmath>

namespace steadyturn {

double TypedValues::number(const std::string& text, const std::string& field) {
  return valueOf(parseNumber(text, field));
}

std::optional<double> TypedValues::optionalNumber(const std::string& text, const std::string& field) {
  if (text.empty()) return std::nullopt;
  return number(text, field);
}

std::optional<int> TypedValues::optionalWhole(const std::string& text, const std::string& field) {
  const auto value = optionalNumber(text, field);
  if (!value) return std::nullopt;
  constexpr double most = 1e9;
  if (*value == std::floor(*value) && std::abs(*value) <= most) return static_cast<int>(*value);
  refuse({.field = field, .found = text, .accepted = "a whole number"});
  return std::nullopt;
}

std::optional<Date> TypedValues::optionalDate(const std::string& text, const std::string& field) {
  if (text.empty()) return std::nullopt;
  return valueOf(parseDate(text, field));
}

Unit TypedValues::unit(const std::string& text, const std::string& field) {
  const auto unit = parseUnit(text);
  if (!unit) refuse({.field = field, .found = text, .accepted = std::string(acceptedUnits())});
  return unit.value_or(Unit::NewtonMetre);
}

std::optional<bool> TypedValues::flag(const std::string& text, const std::string& field) {
  if (text.empty()) return std::nullopt;
  if (text == "yes") return true;
  if (text != "no") refuse({.field = field, .found = text, .accepted = "yes, no"});
  return false;
}

}  // namespace steadyturn
