// Writes CSV as RFC 4180 has it: CRLF after each record, quotes only where they are needed.
#pragma once

#include <string>
#include <string_view>

namespace steadyturn {

// Appends to `out`, which the caller may empty between rows.
class CsvWriter {
 public:
  explicit CsvWriter(std::string& out, char separator = ',') : out_(out), separator_(separator) {}

  // A number, a date, a code: written as it is.
  void plain(std::string_view cell);
  // What a person typed: guarded against being run as a formula (formula_guard.h).
  void text(std::string_view text);
  void endRow();

 private:
  void startCell();
  void append(std::string_view prefix, std::string_view cell);

  std::string& out_;
  char separator_;
  bool rowStarted_ = false;
  bool rowIsBlank_ = true;
};

}  // namespace steadyturn
