// Source: RFC 4180, 2 (the grammar and its examples, rules 1 to 7); RFC 3629 for UTF-8. Line numbers, ';' and the
// byte order mark are common practice.
#include "csv_reader.h"

#include <gmock/gmock.h>

#include "text_source.h"

namespace steadyturn {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

TEST(CsvReader, ReadsTheExamplesOfRfc4180) {
  // Rules 1 to 3: records on lines of their own, the last line end left out, a header.
  const ReadCsv plain = readAll("field_name,field_name2,field_name3\r\naaa,bbb,ccc\r\nzzz,yyy,xxx");
  EXPECT_THAT(plain.header, ElementsAre("field_name", "field_name2", "field_name3"));
  EXPECT_EQ(plain.rows, (Table{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
  // Rules 5 to 7: quotes around cells, a line break within, a doubled quote.
  const ReadCsv quoted = readAll("a,b,c\r\n\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,\"b\"\"bb\",ccc\r\n");
  EXPECT_EQ(quoted.rows, (Table{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "b\"bb", "ccc"}}));
}

TEST(CsvReader, KeepsSpacesInCellsAndDropsThemAroundColumnNames) {
  // Rule 4: "Spaces are considered part of a field".
  const ReadCsv read = readAll(" tool , date\n a , b \n");
  EXPECT_THAT(read.header, ElementsAre("tool", "date"));
  EXPECT_EQ(read.rows, (Table{{" a ", " b "}}));
}

TEST(CsvReader, FindsTheSeparatorFromTheHeader) {
  EXPECT_EQ(readAll("a;b\n1,5;2\n").rows, (Table{{"1,5", "2"}}));
  EXPECT_EQ(readAll("a,b\n1;5,2\n").rows, (Table{{"1;5", "2"}}));
  EXPECT_EQ(readAll("\"x;y\",b\n1,2\n").header, (std::vector<std::string>{"x;y", "b"}));
}

TEST(CsvReader, PassesOverAByteOrderMarkAndBlankLines) {
  const ReadCsv read = readAll("\xEF\xBB\xBF\n\r\na;b\r\n\r\n1;2\n\n3;4\n\n\r\n");
  EXPECT_THAT(read.header, ElementsAre("a", "b"));
  EXPECT_EQ(read.rows, (Table{{"1", "2"}, {"3", "4"}}));
  EXPECT_THAT(read.problems, IsEmpty());
  EXPECT_THAT(read.lines, ElementsAre(5, 7));
}

TEST(CsvReader, TellsTheLineOnWhichARecordBegins) {
  const ReadCsv read = readAll("a,b\n\"one\ntwo\r\nthree\",x\nsecond,y\r\n\"q\",z");
  EXPECT_THAT(read.lines, ElementsAre(2, 5, 6));
}

TEST(CsvReader, ReadsQuotesDoubledManyTimes) {
  EXPECT_EQ(readAll("a,b\n\"\"\"\"\"\",\"\"\"x\"\"y\"\"\"\n").rows, (Table{{"\"\"", "\"x\"y\""}}));
}

TEST(CsvReader, DoesNotCareHowTheBytesAreCutIntoPieces) {
  const std::string text =
      "\xEF\xBB\xBF"
      "a,b\r\n\"x\"\"y\r\nz\",\xC3\xA4\r\n\r\nlast,\"\"";
  for (std::size_t piece = 1; piece <= text.size(); ++piece) {
    const ReadCsv read = readAll(inPieces(text, piece));
    EXPECT_EQ(read.rows, (Table{{"x\"y\r\nz", "\xC3\xA4"}, {"last", ""}})) << piece;
    EXPECT_THAT(read.lines, ElementsAre(2, 5)) << piece;
    EXPECT_THAT(read.problems, IsEmpty()) << piece;
  }
}

TEST(CsvReader, TakesAHeaderAlone) {
  const ReadCsv read = readAll("a,b\r\n");
  EXPECT_THAT(read.header, ElementsAre("a", "b"));
  EXPECT_THAT(read.rows, IsEmpty());
  EXPECT_THAT(read.problems, IsEmpty());
}

TEST(CsvReader, RefusesAnEmptyFile) {
  for (const std::string text : {"", "\xEF\xBB\xBF", "\n\r\n"}) {
    const ReadCsv read = readAll(text);
    ASSERT_THAT(read.problems, SizeIs(1));
    EXPECT_EQ(read.problems[0].found, "an empty file");
  }
}

TEST(CsvReader, RefusesTooFewAndTooManyCellsAndGoesOn) {
  const ReadCsv read = readAll("a,b,c\n1,2\n1,2,3\n1,2,3,4\n");
  EXPECT_EQ(read.rows, (Table{{"1", "2", "3"}}));
  ASSERT_THAT(read.problems, SizeIs(2));
  EXPECT_EQ(read.problems[0],
            (Problem{.field = "c", .found = "2 cells", .accepted = "3 cells, as the header has", .line = 2}));
  EXPECT_EQ(read.problems[1],
            (Problem{.field = {}, .found = "4 cells", .accepted = "3 cells, as the header has", .line = 4}));
}

TEST(CsvReader, RefusesMisplacedQuotesAndGoesOnWithTheNextLine) {
  const ReadCsv read = readAll("a,b\n1,x\"y\n\"1\"z,2\n1,2\n");
  EXPECT_EQ(read.rows, (Table{{"1", "2"}}));
  ASSERT_THAT(read.problems, SizeIs(2));
  EXPECT_EQ(read.problems[0].line, 2);
  EXPECT_EQ(read.problems[0].field, "b");
  EXPECT_EQ(read.problems[1].line, 3);
  EXPECT_EQ(read.problems[1].field, "a");
}

TEST(CsvReader, RefusesAQuoteLeftOpenAtTheLineWhereItOpens) {
  const ReadCsv read = readAll("a,b\n1,2\n1,\"open\n3,4\n");
  EXPECT_EQ(read.rows, (Table{{"1", "2"}}));
  ASSERT_THAT(read.problems, SizeIs(1));
  EXPECT_EQ(read.problems[0].line, 3);
  EXPECT_EQ(read.problems[0].field, "b");
  EXPECT_EQ(read.problems[0].found, "a quote that is never closed");
}

TEST(CsvReader, RefusesALoneCarriageReturn) {
  for (const std::string text : {"a,b\n1\r,2\n", "a,b\n1,2\r"}) {
    const ReadCsv read = readAll(text);
    ASSERT_THAT(read.problems, SizeIs(1)) << text;
    EXPECT_EQ(read.problems[0].line, 2);
    EXPECT_EQ(read.problems[0].found, "a carriage return without a line feed");
  }
}

TEST(CsvReader, RefusesLatin1AndNamesLineAndColumn) {
  const ReadCsv read = readAll(
      "tool,maker\nTW-1,Sch\xFC"
      "tz\nTW-2,Sch\xC3\xBCtz\n");
  EXPECT_EQ(read.rows, (Table{{"TW-2", "Sch\xC3\xBCtz"}}));
  ASSERT_THAT(read.problems, SizeIs(1));
  EXPECT_EQ(
      read.problems[0],
      (Problem{
          .field = "maker", .found = "bytes that are not UTF-8", .accepted = "a file saved as UTF-8", .line = 2}));
}

TEST(CsvReader, RefusesUtf16AtTheHeader) {
  const ReadCsv read =
      readAll(std::string("\xFF\xFE"
                          "a\0,\0b\0\n\0",
                          10));
  ASSERT_THAT(read.problems, SizeIs(1));
  EXPECT_EQ(read.problems[0].found, "bytes that are not UTF-8");
  EXPECT_EQ(read.problems[0].line, 1);
}

TEST(CsvReader, RefusesNulBytes) {
  const ReadCsv read = readAll(std::string("a,b\n1,x\0y\n", 10));
  ASSERT_THAT(read.problems, SizeIs(1));
  EXPECT_EQ(read.problems[0].field, "b");
  EXPECT_EQ(read.problems[0].found, "a NUL byte");
}

}  // namespace
}  // namespace steadyturn
