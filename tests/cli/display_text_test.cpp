#include "display_text.h"

#include <gtest/gtest.h>

#include "utf8.h"

namespace steadyturn {
namespace {

// Well-formed and ill-formed sequences: The Unicode Standard, table 3-7; RFC 3629, 4.
TEST(Utf8, RefusesOverlongFormsSurrogatesAndCutCharacters) {
  EXPECT_FALSE(firstBadByte("N\xC2\xB7m \xE2\x82\xAC \xF0\x9F\x94\xA7"));
  EXPECT_EQ(firstBadByte("ab\xC0\xAF"), 2u);        // overlong '/'
  EXPECT_EQ(firstBadByte("\xE0\x80\x80"), 0u);      // overlong
  EXPECT_EQ(firstBadByte("\xED\xA0\x80"), 0u);      // surrogate
  EXPECT_EQ(firstBadByte("\xF4\x90\x80\x80"), 0u);  // above U+10FFFF
  EXPECT_EQ(firstBadByte("a\xE2\x82"), 1u);         // cut
  EXPECT_EQ(firstBadByte("\x80"), 0u);              // no lead byte
  EXPECT_EQ(firstBadByte("caf\xE9"), 3u);           // Latin-1
}

TEST(DisplayWidth, CountsWhatATerminalShows) {
  EXPECT_EQ(displayWidth("N\xC2\xB7m"), 3u);
  EXPECT_EQ(displayWidth("e\xCC\x81"), 1u);                 // e + combining acute
  EXPECT_EQ(displayWidth("\xE6\x89\xAD\xE7\x9F\xA9"), 4u);  // two ideographs (UAX #11: W)
}

TEST(Clipped, KeepsWithinTheColumns) {
  EXPECT_EQ(clipped("short", 5), "short");
  EXPECT_EQ(clipped("longer", 5), "long\xE2\x80\xA6");
  EXPECT_EQ(displayWidth(clipped("\xE6\x89\xAD\xE7\x9F\xA9\xE6\x89\xAD", 4)), 3u);
}

TEST(TorqueText, WritesTheUnitsCode) {
  EXPECT_EQ(torqueText({27.1163589, Unit::NewtonMetre}), "27.12 N.m");
  EXPECT_EQ(torqueText({20, Unit::PoundForceFoot}), "20 lbf.ft");
}

}  // namespace
}  // namespace steadyturn
