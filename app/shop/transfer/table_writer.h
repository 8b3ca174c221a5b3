// Writes the cells of an export to a stream, some 64 KiB at a time.
#pragma once

#include <optional>
#include <ostream>
#include <string>
#include <string_view>

#include "advance.h"
#include "csv_writer.h"
#include "date.h"

namespace steadyturn {

class TableWriter {
 public:
  TableWriter(std::ostream& out, bool decimalComma, const Progress& progress)
      : out_(out), decimalComma_(decimalComma), csv_(buffer_, decimalComma ? ';' : ','), advance_(progress) {}

  void text(std::string_view text) { csv_.text(text); }
  void code(std::string_view code) { csv_.plain(code); }
  void number(std::optional<double> number);
  // Digits as typed, '.' as the decimal mark.
  void typedNumber(std::string_view typed);
  void date(std::optional<Date> date);
  void flag(std::optional<bool> flag);
  void endRow();

  // Tells how far it is; false when there is no sense in going on.
  bool advance(double fraction) { return advance_.to(fraction) && !failed_; }
  // Hands over what is left. Problems: Cancelled, CannotCreate.
  Result<void> finish();

 private:
  void flush();

  std::ostream& out_;
  bool decimalComma_;
  std::string buffer_;
  CsvWriter csv_;
  Advance advance_;
  bool failed_ = false;
};

}  // namespace steadyturn
