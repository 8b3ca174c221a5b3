// Source: RFC 4180, 2: CRLF after a record, quotes where a cell holds a separator, a quote or a line break.
#include "csv_writer.h"

#include <gtest/gtest.h>

#include "text_source.h"

namespace steadyturn {
namespace {

std::string row(std::initializer_list<std::string_view> cells, char separator = ',') {
  std::string out;
  CsvWriter writer(out, separator);
  for (const std::string_view cell : cells) writer.text(cell);
  writer.endRow();
  return out;
}

TEST(CsvWriter, QuotesOnlyWhereItMust) {
  EXPECT_EQ(row({"aaa", "b b", "ccc"}), "aaa,b b,ccc\r\n");
  EXPECT_EQ(row({"a,b", "c\"d", "e\r\nf", "g\nh", "i;j"}), "\"a,b\",\"c\"\"d\",\"e\r\nf\",\"g\nh\",i;j\r\n");
  EXPECT_EQ(row({"12,5", "a;b"}, ';'), "12,5;\"a;b\"\r\n");
}

TEST(CsvWriter, GuardsTextsAndNeverNumbers) {
  EXPECT_EQ(row({"=1+1", "@x,y"}), "'=1+1,\"'@x,y\"\r\n");
  std::string out;
  CsvWriter writer(out);
  writer.plain("-5");
  writer.plain("+1.2");
  writer.endRow();
  EXPECT_EQ(out, "-5,+1.2\r\n");
}

TEST(CsvWriter, WritesAnEmptyCellThatStandsAloneSoThatItIsNoBlankLine) {
  EXPECT_EQ(row({""}), "\"\"\r\n");
  EXPECT_EQ(row({"", ""}), ",\r\n");
  EXPECT_EQ(readAll("a\r\n" + row({""})).rows, (Table{{""}}));
}

}  // namespace
}  // namespace steadyturn
