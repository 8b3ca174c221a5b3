#include "formula_guard.h"

#include <cstddef>

namespace steadyturn {

bool needsFormulaGuard(std::string_view text) {
  const std::size_t first = text.find_first_not_of('\'');
  return first != std::string_view::npos && std::string_view("=+-@\t\r").find(text[first]) != std::string_view::npos;
}

std::string_view withoutFormulaGuard(std::string_view cell) {
  if (cell.starts_with('\'') && needsFormulaGuard(cell)) cell.remove_prefix(1);
  return cell;
}

}  // namespace steadyturn
