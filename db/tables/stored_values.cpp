#include "stored_values.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <utility>

namespace steadyturn {

Facts decimal(double value) { return writeNumber(value); }
Facts decimal(const std::optional<double>& value) { return value ? decimal(*value) : Facts(nullptr); }
Facts dateFact(const std::optional<Date>& date) { return date ? Facts(writeDate(*date)) : Facts(nullptr); }

std::optional<std::string> dateText(const std::optional<Date>& date) {
  return date ? std::optional(writeDate(*date)) : std::nullopt;
}

void refuseDamaged(std::string_view found) {
  throw StoreError({.kind = ProblemKind::Unavailable,
                    .field = "shop",
                    .found = std::string(found),
                    .accepted = "a shop that is not damaged: go back to a backup"});
}

Unit storedUnit(std::string_view code) {
  const auto* unit = std::ranges::find(allUnits, code, unitCode);
  if (unit == allUnits.end()) refuseDamaged(code);
  return *unit;
}

ToolKind storedKind(const std::string& type, const std::string& cls) {
  const auto kind = stored(parseToolKind(type, cls), type + ' ' + cls);
  // People may type "1" for I; the store never does.
  if (writeType(kind.type) != type || writeClass(kind.cls) != cls) refuseDamaged(type + ' ' + cls);
  return kind;
}

Date storedDate(std::string_view text) { return stored(parseDate(text, "date"), text); }

std::optional<Date> storedOptionalDate(const Statement& row, int column) {
  return row.isNull(column) ? std::nullopt : std::optional(storedDate(row.text(column)));
}

std::optional<bool> storedOptionalBool(const Statement& row, int column) {
  const auto number = row.optionalInteger(column);
  if (number && *number != 0 && *number != 1) refuseDamaged(std::to_string(*number));
  return number ? std::optional(*number == 1) : std::nullopt;
}

int storedInt(const Statement& row, int column) {
  const auto number = row.integer(column);
  if (!std::in_range<int>(number)) refuseDamaged(std::to_string(number));
  return static_cast<int>(number);
}

std::optional<int> storedOptionalInt(const Statement& row, int column) {
  return row.isNull(column) ? std::nullopt : std::optional(storedInt(row, column));
}

}  // namespace steadyturn
