// Where one CSV record ends and where its cells lie: the grammar of RFC 4180 over bytes at hand, nothing else.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace steadyturn {

struct CsvCellSpan {
  std::size_t begin = 0, end = 0;  // without the quotes around it
  bool doubledQuotes = false;      // "" inside stands for "
};

enum class CsvFault {
  None,
  QuoteInside,   // a quote in a cell that is not quoted, or text after a closing quote
  LoneReturn,    // a carriage return that no line feed follows, outside quotes
  QuoteLeftOpen  // the text ends within quotes
};

struct CsvScan {
  bool complete = false;       // false: more bytes are needed; nothing else counts then
  std::size_t length = 0;      // of the record with its line end
  std::size_t lineBreaks = 0;  // in `length`
  CsvFault fault = CsvFault::None;
  std::size_t faultCell = 0;  // counted from 0
};

// Looks at the record that `bytes` begins with; `isAll` says that nothing follows them. Fills `cells` (emptied
// first). A faulty record is taken to end with its line, so that the rows after it can still be looked at.
CsvScan scanRecord(std::string_view bytes, bool isAll, char separator, std::vector<CsvCellSpan>& cells);

// ',' or ';', whichever comes first outside quotes in the header; ',' where there is neither.
char separatorOf(std::string_view header);

}  // namespace steadyturn
