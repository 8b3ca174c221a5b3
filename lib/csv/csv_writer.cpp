#include "csv_writer.h"

#include <algorithm>

#include "formula_guard.h"

namespace steadyturn {

void CsvWriter::startCell() {
  if (rowStarted_) {
    out_ += separator_;
    rowIsBlank_ = false;
  }
  rowStarted_ = true;
}

void CsvWriter::append(std::string_view prefix, std::string_view cell) {
  startCell();
  if (!cell.empty()) rowIsBlank_ = false;
  const bool quoted =
      std::ranges::any_of(cell, [this](char c) { return c == separator_ || c == '"' || c == '\r' || c == '\n'; });
  if (!quoted) {
    out_.append(prefix).append(cell);
    return;
  }
  out_.append("\"").append(prefix);
  for (const char c : cell) {
    if (c == '"') out_ += '"';
    out_ += c;
  }
  out_ += '"';
}

void CsvWriter::plain(std::string_view cell) { append({}, cell); }

void CsvWriter::text(std::string_view text) { append(needsFormulaGuard(text) ? "'" : "", text); }

void CsvWriter::endRow() {
  // A record of one empty cell would be a blank line, which readers pass over.
  if (rowStarted_ && rowIsBlank_) out_ += "\"\"";
  out_ += "\r\n";
  rowStarted_ = false;
  rowIsBlank_ = true;
}

}  // namespace steadyturn
