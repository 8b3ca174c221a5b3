// Figures to check against, from tests/data/reference/*.csv. A file says where its figures come from before it
// gives one:
//   # source: title, edition, table or equation
//   # digits: as printed | N decimals | N significant
//   name,figure
//   M8,36.6
// "as printed": each cell shows as many digits as its source did. "N decimals" and "N significant" are for
// tables that a source rounds alike. A figure holds within half a unit of its last printed digit.
// Further lines that begin with '#' are remarks. Cells are plain: no quotes, no commas inside.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace steadyturn::testing {

struct ReferenceFigure {
  double value;
  double tolerance;  // half a unit of the last printed digit
};

class ReferenceTable {
 public:
  // tests/data/reference/NAME. Throws std::runtime_error for a file that is missing, says no source or digits,
  // or has no rows, so that a test can't pass on nothing.
  static ReferenceTable load(std::string_view name);
  static ReferenceTable read(std::string_view text, std::string_view name);

  const std::string& source() const { return source_; }
  std::size_t rows() const { return rows_.size(); }
  // Throw std::runtime_error for a column that is not there or a cell that is not a number.
  const std::string& text(std::size_t row, std::string_view column) const;
  ReferenceFigure figure(std::size_t row, std::string_view column) const;
  bool has(std::size_t row, std::string_view column) const { return !text(row, column).empty(); }

 private:
  std::string name_;
  std::string source_;
  std::string digits_;
  std::vector<std::string> columns_;
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace steadyturn::testing
