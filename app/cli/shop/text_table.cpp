#include "text_table.h"

#include <algorithm>

#include "display_text.h"

namespace steadyturn {
namespace {

std::string padded(const std::string& cell, std::size_t width, Side side) {
  const std::string blanks(width - std::min(width, displayWidth(cell)), ' ');
  return side == Side::Right ? blanks + cell : cell + blanks;
}

void endLine(std::string& text) {
  text.erase(text.find_last_not_of(' ') + 1);
  text += '\n';
}

}  // namespace

void TextTable::row(std::vector<std::string> cells) {
  for (std::string& cell : cells) cell = displayText(cell);
  rows_.push_back(std::move(cells));
}

std::string TextTable::text() const {
  std::vector<std::size_t> widths;
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    std::size_t width = displayWidth(columns_[i].heading);
    for (const auto& row : rows_) width = std::max(width, displayWidth(row[i]));
    widths.push_back(width);
  }
  std::string text;
  const auto add = [&](std::size_t i, const std::string& cell) {
    text += (i == 0 ? "" : "  ") + padded(cell, widths[i], columns_[i].side);
  };
  for (std::size_t i = 0; i < columns_.size(); ++i) add(i, columns_[i].heading);
  endLine(text);
  for (std::size_t i = 0; i < columns_.size(); ++i) add(i, std::string(widths[i], '-'));
  endLine(text);
  for (const auto& row : rows_) {
    for (std::size_t i = 0; i < columns_.size(); ++i) add(i, row[i]);
    endLine(text);
  }
  return text;
}

std::string factLines(const std::vector<std::pair<std::string, std::string>>& facts) {
  std::size_t width = 0;
  for (const auto& [name, value] : facts) width = value.empty() ? width : std::max(width, displayWidth(name));
  std::string text;
  for (const auto& [name, value] : facts) {
    if (value.empty()) continue;
    text += padded(name, width + 2, Side::Left) + displayText(value) + '\n';
  }
  return text;
}

}  // namespace steadyturn
