// Source: RFC 3629, 3 (the table of ranges), 4 (the grammar) and 7 (its examples).
#include "utf8.h"

#include <gtest/gtest.h>

namespace steadyturn {
namespace {

TEST(Utf8, TakesTheExamplesOfRfc3629) {
  EXPECT_TRUE(isUtf8("\x41\xE2\x89\xA2\xCE\x91\x2E"));          // A≢Α.
  EXPECT_TRUE(isUtf8("\xED\x95\x9C\xEA\xB5\xAD\xEC\x96\xB4"));  // 한국어
  EXPECT_TRUE(isUtf8("\xE6\x97\xA5\xE6\x9C\xAC\xE8\xAA\x9E"));  // 日本語
  EXPECT_TRUE(isUtf8("\xEF\xBB\xBF\xF0\xA3\x8E\xB4"));          // U+FEFF U+233B4
}

TEST(Utf8, TakesTheEndsOfEachRange) {
  EXPECT_TRUE(isUtf8(""));
  EXPECT_TRUE(
      isUtf8("\x7F\xC2\x80\xDF\xBF\xE0\xA0\x80\xED\x9F\xBF\xEE\x80\x80\xEF\xBF\xBF\xF0\x90\x80\x80\xF4\x8F\xBF\xBF"));
}

TEST(Utf8, RefusesWhatTheGrammarDoesNotHave) {
  EXPECT_FALSE(isUtf8("\xFC"));              // Latin-1 ü
  EXPECT_FALSE(isUtf8("\x80"));              // a tail alone
  EXPECT_FALSE(isUtf8("\xC0\x80"));          // overlong (RFC 3629, 10)
  EXPECT_FALSE(isUtf8("\xE0\x9F\xBF"));      // overlong
  EXPECT_FALSE(isUtf8("\xF0\x8F\xBF\xBF"));  // overlong
  EXPECT_FALSE(isUtf8("\xED\xA0\x80"));      // a surrogate
  EXPECT_FALSE(isUtf8("\xF4\x90\x80\x80"));  // above U+10FFFF
  EXPECT_FALSE(isUtf8("\xF5\x80\x80\x80"));
  EXPECT_FALSE(isUtf8("\xE2\x82"));  // cut off
  EXPECT_FALSE(isUtf8("\xE2\x82\x41"));
}

}  // namespace
}  // namespace steadyturn
