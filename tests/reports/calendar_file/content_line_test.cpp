#include "content_line.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <vector>

namespace steadyturn {
namespace {

// RFC 5545, 3.3.11, the example there.
TEST(EscapeText, WritesTheStandardsExample) {
  EXPECT_EQ(escapeText("Project XYZ Final Review\nConference Room - 3B\nCome Prepared."),
            "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.");
}

// RFC 5545, 3.3.11: ESCAPED-CHAR = ("\\" / "\;" / "\," / "\N" / "\n"); a colon is not escaped; TSAFE-CHAR has no
// control characters but the tab.
TEST(EscapeText, EscapesWhatTheStandardNamesAndNothingElse) {
  EXPECT_EQ(escapeText("a\\b;c,d:e\"f"), "a\\\\b\\;c\\,d:e\"f");
  EXPECT_EQ(escapeText("one\r\ntwo\rthree\nfour"), "one\\ntwo\\nthree\\nfour");
  EXPECT_EQ(escapeText("tab\tstays, bell\a goes"), "tab\tstays\\, bell  goes");
  EXPECT_EQ(escapeText("±4 % at 60 N·m"), "±4 % at 60 N·m");
  EXPECT_EQ(escapeText(std::string("x\0y\x7Fz", 5)), "x y z");
}

std::string unescape(const std::string& text) {
  std::string plain;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] != '\\') {
      plain += text[i];
    } else {
      ++i;
      plain += text[i] == 'n' ? '\n' : text[i];
    }
  }
  return plain;
}

TEST(EscapeText, CanBeUndone) {
  rc::check([] {
    const auto text = *rc::gen::container<std::string>(rc::gen::element('a', '\\', ';', ',', '\n', 'n', 'N', ':'));
    const auto escaped = escapeText(text);
    RC_ASSERT(escaped.find('\n') == std::string::npos);
    RC_ASSERT(unescape(escaped) == text);
  });
}

std::vector<std::string> parts(const std::string& folded) {
  std::vector<std::string> found;
  std::size_t from = 0;
  for (auto end = folded.find("\r\n"); end != std::string::npos; end = folded.find("\r\n", from)) {
    found.push_back(folded.substr(from, end - from));
    from = end + 2;
  }
  EXPECT_EQ(from, folded.size());  // the last thing is a line break
  return found;
}

// RFC 5545, 3.1: remove CRLF and the one white-space character after it.
std::string unfold(const std::vector<std::string>& lines) {
  std::string whole = lines.front();
  for (std::size_t i = 1; i < lines.size(); ++i) {
    EXPECT_EQ(lines[i].front(), ' ');
    whole += lines[i].substr(1);
  }
  return whole;
}

TEST(ContentLine, FoldsAtSeventyFiveOctets) {
  EXPECT_EQ(contentLine(std::string(75, 'a')), std::string(75, 'a') + "\r\n");
  EXPECT_EQ(contentLine(std::string(76, 'a')), std::string(75, 'a') + "\r\n a\r\n");
  // A continuation's blank counts: 75 + 74.
  EXPECT_EQ(parts(contentLine(std::string(75 + 74, 'a'))).size(), 2U);
  EXPECT_EQ(parts(contentLine(std::string(75 + 74 + 1, 'a'))).size(), 3U);
  EXPECT_EQ(contentLine(""), "\r\n");
}

TEST(ContentLine, KeepsACharacterOfSeveralOctetsWhole) {
  // U+1F527 has four octets in UTF-8 (RFC 3629, 3): octets 73 to 76 here.
  const std::string wrench = "\xF0\x9F\x94\xA7";
  EXPECT_EQ(contentLine(std::string(72, 'a') + wrench), std::string(72, 'a') + "\r\n " + wrench + "\r\n");
  EXPECT_EQ(contentLine(std::string(71, 'a') + wrench), std::string(71, 'a') + wrench + "\r\n");
}

TEST(ContentLine, IsNeverTooLongNorSplitsACharacterAndUnfoldsToItself) {
  rc::check([] {
    const auto characters = *rc::gen::container<std::vector<std::string>>(
        rc::gen::element<std::string>("a", " ", "·", "±", "…", "\xF0\x9F\x94\xA7"));
    std::string line;
    for (int repeat = 0; repeat < 4; ++repeat)
      for (const auto& character : characters) line += character;
    const auto folded = parts(contentLine(line));
    for (const auto& part : folded) {
      RC_ASSERT(part.size() <= 75U);
      const auto first =
          static_cast<unsigned char>(part.empty() ? 'a' : part[part.front() == ' ' && part.size() > 1]);
      RC_ASSERT((first & 0xC0) != 0x80);
    }
    RC_ASSERT(unfold(folded) == line);
  });
}

TEST(ContentLine, TakesWhatIsNoUtf8ToItsEnd) {
  const std::string broken(500, '\x80');
  const auto folded = parts(contentLine(broken));
  for (const auto& part : folded) EXPECT_LE(part.size(), 75U);
  EXPECT_EQ(unfold(folded), broken);
}

}  // namespace
}  // namespace steadyturn
