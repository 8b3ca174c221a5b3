// Between the store's columns, the ledger's facts and the values of the core.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>

#include "ledger.h"
#include "records.h"

namespace steadyturn {

// For a ledger entry: a decimal as text; null where there is none.
Facts decimal(double value);
Facts decimal(const std::optional<double>& value);
Facts dateFact(const std::optional<Date>& date);
template <typename Value>
Facts orNull(const std::optional<Value>& value) {
  return value ? Facts(*value) : Facts(nullptr);
}

std::optional<std::string> dateText(const std::optional<Date>& date);

// From a column. They throw StoreError (damaged) for what was never written there.
Unit storedUnit(std::string_view code);
ToolKind storedKind(const std::string& type, const std::string& cls);
Date storedDate(std::string_view text);
std::optional<Date> storedOptionalDate(const Statement& row, int column);
std::optional<bool> storedOptionalBool(const Statement& row, int column);
int storedInt(const Statement& row, int column);
std::optional<int> storedOptionalInt(const Statement& row, int column);
[[noreturn]] void refuseDamaged(std::string_view found);

template <typename Value>
Value stored(Result<Value> parsed, std::string_view found) {
  if (!parsed) refuseDamaged(found);
  return *parsed;
}

}  // namespace steadyturn
