// Reads CSV as RFC 4180 has it, a record at a time out of a stream of bytes: quoted cells with separators, quotes and
// line breaks in them, CRLF or LF, ',' or ';' found from the header, UTF-8 with or without a byte order mark. Blank
// lines are passed over.
//
// Nothing is held but the record at hand: a record may have 1 MiB, so a file without a line end is refused at once.
#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "csv_scan.h"
#include "problem.h"

namespace steadyturn {

struct CsvRow {
  std::size_t line = 0;                     // where the record begins, counted from 1 with the header
  std::span<const std::string_view> cells;  // as many as the header has; valid until the next call
};

class CsvReader {
 public:
  static constexpr std::size_t longestRecord = std::size_t{1024} * 1024;  // bytes, without the line end

  // Puts up to `room` bytes at `into` and says how many; 0 is the end.
  using Source = std::function<std::size_t(char* into, std::size_t room)>;
  explicit CsvReader(Source source);

  // The column names, blanks around them dropped. Call it first, once. Problems: an empty file, and all that a
  // row can have.
  Result<std::vector<std::string>> header();

  enum class Step {
    Row,  // row() is the next one
    Bad,  // problem() says what is wrong with it; the rows after it can be read
    End
  };
  // A record that is too long, or a quote left open, is the last: End follows.
  Step next();
  const CsvRow& row() const { return row_; }
  const Problem& problem() const { return problem_; }

 private:
  bool fill();
  Step read();
  bool nextRecord(CsvScan& scan);
  bool cutCells(std::size_t length);
  Step bad(std::string field, std::string found, std::string accepted);
  std::string columnName(std::size_t cell) const;

  Source source_;
  std::vector<char> buffer_;
  std::size_t begin_ = 0, end_ = 0;  // what is in the buffer and not yet read
  bool sourceIsEmpty_ = false;
  bool over_ = false;
  char separator_ = ',';
  std::size_t line_ = 1;  // of the next record
  std::vector<std::string> header_;
  std::vector<CsvCellSpan> spans_;
  std::vector<std::string_view> cells_;
  CsvRow row_;
  Problem problem_;
};

}  // namespace steadyturn
