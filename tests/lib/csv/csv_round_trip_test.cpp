// A property: whatever texts are written, the same texts are read, and written again they are the same bytes.
#include <gtest/gtest.h>
// rapidcheck/gtest.h needs gtest.h before it.
#include <rapidcheck/gtest.h>

#include "csv_writer.h"
#include "formula_guard.h"
#include "text_source.h"

namespace steadyturn {
namespace {

// Texts rich in what CSV and spreadsheets give a meaning to.
rc::Gen<std::string> cellText() {
  static const std::vector<std::string> pieces{"\"",
                                               "\"\"",
                                               ",",
                                               ";",
                                               "\r\n",
                                               "\n",
                                               "\r",
                                               "\t",
                                               "=",
                                               "+",
                                               "-",
                                               "@",
                                               "'",
                                               "''",
                                               " ",
                                               "a",
                                               "12.5",
                                               "\xC3\xA9",
                                               "\xE2\x82\xAC",
                                               "\xF0\x9F\x94\xA7",
                                               "\xEF\xBB\xBF"};
  return rc::gen::map(rc::gen::container<std::vector<std::string>>(rc::gen::elementOf(pieces)),
                      [](const std::vector<std::string>& chosen) {
                        std::string text;
                        for (const std::string& piece : chosen) text += piece;
                        return text;
                      });
}

std::string write(const Table& table, std::size_t columns, char separator) {
  std::string out;
  CsvWriter writer(out, separator);
  for (std::size_t i = 0; i < columns; ++i) writer.plain(std::string("c").append(std::to_string(i)));
  writer.endRow();
  for (const auto& row : table) {
    for (const std::string& text : row) writer.text(text);
    writer.endRow();
  }
  return out;
}

RC_GTEST_PROP(CsvRoundTrip, ReadsBackWhatWasWritten, ()) {
  const std::size_t columns = *rc::gen::inRange<std::size_t>(1, 6);
  // A header of one column has no separator to be found; ',' is assumed then.
  const char separator = columns == 1 ? ',' : *rc::gen::element(',', ';');
  const Table table = *rc::gen::container<Table>(rc::gen::container<std::vector<std::string>>(columns, cellText()));
  const std::string bytes = write(table, columns, separator);

  ReadCsv read = readAll(inPieces(bytes, *rc::gen::inRange<std::size_t>(1, 40)));
  RC_ASSERT(read.problems.empty());
  for (auto& row : read.rows) {
    for (std::string& cell : row) cell = std::string(withoutFormulaGuard(cell));
  }
  RC_ASSERT(read.rows == table);
  RC_ASSERT(write(read.rows, columns, separator) == bytes);
}

RC_GTEST_PROP(CsvRoundTrip, NoWrittenTextBeginsAFormula, ()) {
  const std::string text = *cellText();
  std::string out;
  CsvWriter writer(out);
  writer.text(text);
  const char first = out.empty() ? 'a' : out[out[0] == '"' ? 1 : 0];
  RC_ASSERT(std::string_view("=+-@\t\r").find(first) == std::string_view::npos);
}

// Bytes of any kind end in rows and problems, never in anything else.
RC_GTEST_PROP(CsvRoundTrip, ReadsAnyBytesToAnEnd, (const std::string& bytes)) {
  const ReadCsv whole = readAll(bytes);
  const ReadCsv cut = readAll(inPieces(bytes, 1));
  RC_ASSERT(whole.rows == cut.rows);
  RC_ASSERT(whole.problems == cut.problems);
}

}  // namespace
}  // namespace steadyturn
