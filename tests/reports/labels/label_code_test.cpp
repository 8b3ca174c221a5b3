#include "label_code.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cctype>

namespace steadyturn {
namespace {

std::string written(std::string id) { return writeLabelCode({.kind = LabelKind::Tool, .id = std::move(id)}); }

std::string lower(std::string text) {
  std::ranges::transform(text, text.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

// Octets of a code point, RFC 3629, 3.
std::string utf8(char32_t point) {
  const auto tail = [](char32_t bits) { return static_cast<char>(0x80 | (bits & 0x3F)); };
  if (point < 0x80) return {static_cast<char>(point)};
  if (point < 0x800) return {static_cast<char>(0xC0 | (point >> 6)), tail(point)};
  if (point < 0x10000) return {static_cast<char>(0xE0 | (point >> 12)), tail(point >> 6), tail(point)};
  return {static_cast<char>(0xF0 | (point >> 18)), tail(point >> 12), tail(point >> 6), tail(point)};
}

rc::Gen<std::string> anyMark() {
  const auto point =
      rc::gen::suchThat(rc::gen::weightedOneOf<char32_t>({{5, rc::gen::inRange<char32_t>(1, 0x80)},
                                                          {1, rc::gen::inRange<char32_t>(0x80, 0x110000)}}),
                        [](char32_t value) { return value < 0xD800 || value > 0xDFFF; });
  return rc::gen::map(rc::gen::nonEmpty(rc::gen::container<std::vector<char32_t>>(point)),
                      [](const std::vector<char32_t>& points) {
                        std::string text;
                        for (const auto one : points) text += utf8(one);
                        return text;
                      });
}

// ASCII: ANSI X3.4 (blank 20, '/' 2F, '%' 25, ':' 3A, 'a' 61, 'w' 77); U+00DC in UTF-8 is C3 9C (RFC 3629). The form
// of an escaped octet: RFC 3986, 2.1.
TEST(LabelCode, IsShortAndReadsWithoutTheProgram) {
  EXPECT_EQ(written("W06"), "STURN:T:W06");
  EXPECT_EQ(written("TW-07.2"), "STURN:T:TW-07.2");
  EXPECT_EQ(written("w 6/a"), "STURN:T:%77%206%2F%61");
  EXPECT_EQ(written("100%:Ü"), "STURN:T:100%25%3A%C3%9C");
}

// ISO/IEC 18004, 7.4.4 (from memory): alphanumeric mode has 0-9, A-Z, space and $ % * + - . / :
TEST(LabelCode, KeepsToQrsAlphanumericCharacters) {
  rc::check([] {
    const auto code = written(*anyMark());
    RC_ASSERT(code.find_first_not_of("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:") == std::string::npos);
  });
}

TEST(LabelCode, ReadsBackWhateverTheMarkIsAndHoweverTheScannerTypes) {
  rc::check([] {
    const auto mark = *anyMark();
    const auto code = written(mark);
    for (const auto& typed : {code, lower(code), "  " + code + "\r\n", code + "\t"}) {
      RC_ASSERT(looksLikeLabelCode(typed));
      const auto read = parseLabelCode(typed);
      RC_ASSERT(read.has_value());
      RC_ASSERT(*read == (LabelCode{.kind = LabelKind::Tool, .id = mark}));
    }
  });
}

TEST(LabelCode, TellsAScanFromOtherTyping) {
  for (const char* typed : {"", "   ", "W06", "STURN", "sturn T W06", "12.5", "XSTURN:T:W06"}) {
    EXPECT_FALSE(looksLikeLabelCode(typed)) << typed;
    EXPECT_FALSE(parseLabelCode(typed)) << typed;
  }
}

TEST(LabelCode, RefusesBrokenCodesAndSaysWhatIsWanted) {
  for (const char* typed :
       {"STURN:", "STURN:T", "STURN:T:", "STURN:R:W06", "STURN:T:W%", "STURN:T:W%4", "STURN:T:W%G0", "STURN:T:W 06",
        "STURN:T:W06STURN:T:W06", "STURN:T:%FF", "STURN:T:%C3", "STURN:TW06"}) {
    const auto read = parseLabelCode(typed);
    ASSERT_FALSE(read) << typed;
    EXPECT_EQ(read.error().front().field, "label");
    EXPECT_EQ(read.error().front().found, typed);
    EXPECT_THAT(read.error().front().accepted, testing::HasSubstr("STURN:T:"));
  }
}

}  // namespace
}  // namespace steadyturn
