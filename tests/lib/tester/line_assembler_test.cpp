#include "line_assembler.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace steadyturn {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(LineAssembler, TakesEveryLineEnd) {
  LineAssembler assembler;
  EXPECT_THAT(assembler.take("1\r2\n3\r\n\n\r4"), ElementsAre("1", "2", "3"));
  EXPECT_THAT(assembler.take("5"), IsEmpty());
  EXPECT_THAT(assembler.take("\r"), ElementsAre("45"));
  EXPECT_THAT(assembler.take("\n6\n"), ElementsAre("6"));
}

TEST(LineAssembler, DropsATooLongLineWholeAndCountsIt) {
  LineAssembler assembler(5);
  EXPECT_THAT(assembler.take("12345\n"), ElementsAre("12345"));
  EXPECT_EQ(assembler.dropped(), 0u);
  EXPECT_THAT(assembler.take("123456789"), IsEmpty());
  EXPECT_THAT(assembler.take("0\n7\n"), ElementsAre("7"));
  EXPECT_EQ(assembler.dropped(), 1u);
}

TEST(LineAssembler, ForgetsTheHalfLineOfADeviceThatWentAway) {
  LineAssembler assembler;
  EXPECT_THAT(assembler.take("20.1\n19."), ElementsAre("20.1"));
  EXPECT_EQ(assembler.unplugged(), "19.");
  EXPECT_EQ(assembler.unplugged(), "");
  EXPECT_THAT(assembler.take("21.3\n"), ElementsAre("21.3"));
}

RC_GTEST_PROP(LineAssembler, GivesTheSameLinesHoweverTheBytesAreChunked, ()) {
  const auto bytes = *rc::gen::container<std::string>(rc::gen::element('1', '2', '.', ' ', '\r', '\n', '\xC2', '\0'));
  LineAssembler whole(4);
  const auto expected = whole.take(bytes);
  LineAssembler chunked(4);
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < bytes.size();) {
    const auto size = *rc::gen::inRange<std::size_t>(1, 6);
    for (auto& line : chunked.take(std::string_view(bytes).substr(at, size))) lines.push_back(std::move(line));
    at += size;
  }
  RC_ASSERT(lines == expected);
  RC_ASSERT(chunked.dropped() == whole.dropped());
  RC_ASSERT(chunked.unplugged() == whole.unplugged());
}

}  // namespace
}  // namespace steadyturn
