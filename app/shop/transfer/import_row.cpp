#include "import_row.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "formula_guard.h"
#include "stored_text.h"
#include "torque.h"

namespace steadyturn {

void ImportRow::refuse(std::size_t column, std::string_view found, std::string accepted, ProblemKind kind) {
  refuse({{.kind = kind, .field = name(column), .found = std::string(found), .accepted = std::move(accepted)}});
}

void ImportRow::refuse(const Problems& problems) {
  sound_ = false;
  for (Problem problem : problems) {
    problem.line = row_.line;
    problems_.add(std::move(problem));
  }
}

std::string_view ImportRow::code(std::size_t column) const {
  std::string_view cell = raw(column);
  const std::size_t first = cell.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return cell.substr(first, cell.find_last_not_of(" \t") - first + 1);
}

std::string ImportRow::text(std::size_t column) const {
  std::string text(withoutFormulaGuard(raw(column)));
  for (std::size_t at = text.find("\r\n"); at != std::string::npos; at = text.find("\r\n", at)) text.erase(at, 1);
  normalise(text);
  return text;
}

// A decimal comma where none was announced is the commonest reason of all.
Problem ImportRow::withCommaHint(Problem problem) const {
  if (!decimalComma_ && problem.found.find(',') != std::string::npos) {
    problem.accepted += ", or say that the file has decimal commas";
  }
  return problem;
}

double ImportRow::number(std::size_t column) {
  auto number = parseNumber(code(column), columns_[column].name, decimalComma_);
  if (number) return *number;
  refuse({withCommaHint(std::move(number.error().front()))});
  return 0;
}

std::optional<double> ImportRow::optionalNumber(std::size_t column) {
  if (code(column).empty()) return std::nullopt;
  return number(column);
}

std::optional<int> ImportRow::optionalWhole(std::size_t column) {
  constexpr double most = 1'000'000'000;
  const auto value = optionalNumber(column);
  if (!value) return std::nullopt;
  if (*value != std::floor(*value) || std::abs(*value) > most) refuse(column, code(column), "a whole number");
  return sound_ ? static_cast<int>(*value) : 0;
}

double ImportRow::torque(std::size_t column) {
  auto torque = parseTorqueNumber(code(column), columns_[column].name, decimalComma_);
  if (!torque) {
    refuse({withCommaHint(std::move(torque.error().front()))});
  } else if (*torque == 0) {
    refuse(column, code(column), "a torque above 0");
  }
  return torque.value_or(0);
}

std::string ImportRow::typedNumber(std::size_t column) const {
  std::string typed(code(column));
  if (decimalComma_) std::ranges::replace(typed, ',', '.');
  return typed;
}

Date ImportRow::date(std::size_t column) { return valueOf(parseDate(code(column), columns_[column].name)); }

std::optional<Date> ImportRow::optionalDate(std::size_t column) {
  if (code(column).empty()) return std::nullopt;
  return date(column);
}

Unit ImportRow::unit(std::size_t column) {
  const auto unit = parseUnit(code(column));
  if (!unit) refuse(column, code(column), std::string(acceptedUnits()));
  return unit.value_or(Unit::NewtonMetre);
}

std::optional<bool> ImportRow::flag(std::size_t column) {
  constexpr std::array<std::string_view, 4> yes{"yes", "y", "true", "1"};
  constexpr std::array<std::string_view, 4> no{"no", "n", "false", "0"};
  std::string cell(code(column));
  std::ranges::transform(cell, cell.begin(),
                         [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
  if (cell.empty()) return std::nullopt;
  if (std::ranges::find(yes, cell) != yes.end()) return true;
  if (std::ranges::find(no, cell) == no.end()) refuse(column, code(column), "yes or no");
  return false;
}

}  // namespace steadyturn
