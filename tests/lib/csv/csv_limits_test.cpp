// A record may have 1 MiB; the limit is the reader's own and holds memory and time down whatever a file contains.
#include <gmock/gmock.h>

#include <cstring>

#include "text_source.h"

namespace steadyturn {
namespace {

using testing::IsEmpty;
using testing::SizeIs;

constexpr std::size_t limit = CsvReader::longestRecord;

TEST(CsvLimits, TakesARecordOfExactlyOneMebibyte) {
  const std::string cell(limit - 2, 'x');
  for (const std::string end : {"\n", "\r\n", ""}) {
    const ReadCsv read = readAll("a,b\n1," + cell + end);
    EXPECT_THAT(read.problems, IsEmpty());
    ASSERT_THAT(read.rows, SizeIs(1));
    EXPECT_EQ(read.rows[0][1].size(), cell.size());
  }
}

TEST(CsvLimits, RefusesOneByteMoreAndStops) {
  const std::string cell(limit - 1, 'x');
  for (const std::string end : {"\n1,2\n", "\r\n1,2\n", ""}) {
    const ReadCsv read = readAll("a,b\n1,2\n1," + cell + end);
    EXPECT_EQ(read.rows, (Table{{"1", "2"}}));
    ASSERT_THAT(read.problems, SizeIs(1));
    EXPECT_EQ(read.problems[0].line, 3);
    EXPECT_EQ(read.problems[0].found, "a row of more than 1 MiB");
  }
}

// 200 MB without a line end, as text, within quotes, behind a stray quote, as the header.
TEST(CsvLimits, AsksForLittleMoreThanTheLimitOfAnEndlessLine) {
  for (const std::string start : {"a,b\n", "a,b\n\"", "a,b\n1,x\"", "", "\""}) {
    std::size_t given = 0;
    const ReadCsv read = readAll([&](char* into, std::size_t room) {
      constexpr std::size_t all = 200'000'000;
      if (given >= all) return std::size_t{0};
      std::memset(into, 'x', room);
      if (given == 0) start.copy(into, start.size());
      given += room;
      return room;
    });
    ASSERT_THAT(read.problems, SizeIs(1)) << start;
    EXPECT_EQ(read.problems[0].found, "a row of more than 1 MiB");
    EXPECT_LT(given, 2 * limit);
  }
}

}  // namespace
}  // namespace steadyturn
