// A table for a terminal: columns aligned by what a terminal shows, two blanks between them.
#pragma once

#include <string>
#include <vector>

namespace steadyturn {

enum class Side { Left, Right };

struct TextColumn {
  std::string heading;  // with its unit: "mean, %"
  Side side = Side::Left;
};

class TextTable {
 public:
  explicit TextTable(std::vector<TextColumn> columns) : columns_(std::move(columns)) {}
  // As many cells as columns.
  void row(std::vector<std::string> cells);
  bool empty() const { return rows_.empty(); }
  // Headings, a rule, rows; each line ends with a line break and without blanks before it.
  std::string text() const;

 private:
  std::vector<TextColumn> columns_;
  std::vector<std::vector<std::string>> rows_;
};

// "name  value" lines; pairs with an empty value are left out.
std::string factLines(const std::vector<std::pair<std::string, std::string>>& facts);

}  // namespace steadyturn
