#include "display_text.h"

#include <algorithm>
#include <array>

#include "utf8.h"

namespace steadyturn {
namespace {

constexpr std::string_view replacement = "\xEF\xBF\xBD";  // U+FFFD
constexpr std::string_view ellipsis = "\xE2\x80\xA6";     // U+2026

struct Range {
  char32_t first, last;
};

constexpr std::array noColumn{Range{0x0300, 0x036F}, Range{0x0483, 0x0489}, Range{0x0591, 0x05BD},
                              Range{0x200B, 0x200F}, Range{0x20D0, 0x20FF}, Range{0xFE00, 0xFE0F},
                              Range{0xFE20, 0xFE2F}};
constexpr std::array twoColumns{Range{0x1100, 0x115F},   Range{0x2E80, 0x303E},  Range{0x3041, 0xA4CF},
                                Range{0xAC00, 0xD7A3},   Range{0xF900, 0xFAFF},  Range{0xFE30, 0xFE6F},
                                Range{0xFF00, 0xFF60},   Range{0xFFE0, 0xFFE6},  Range{0x1F300, 0x1F64F},
                                Range{0x1F900, 0x1F9FF}, Range{0x20000, 0x3FFFD}};

template <std::size_t N>
bool isIn(const std::array<Range, N>& ranges, char32_t c) {
  return std::ranges::any_of(ranges, [c](Range range) { return c >= range.first && c <= range.last; });
}

// C0, DEL, C1, line and paragraph separators, and the marks that turn the direction of the text around.
bool isControl(char32_t c) {
  return c < 0x20 || (c >= 0x7F && c < 0xA0) || (c >= 0x2028 && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
}

std::size_t columnsOf(char32_t c) { return isIn(noColumn, c) ? 0 : isIn(twoColumns, c) ? 2 : 1; }

}  // namespace

std::string displayText(std::string_view text) {
  std::string shown;
  for (std::size_t at = 0; at < text.size();) {
    const auto character = decodeAt(text, at);
    if (!character || isControl(character->codePoint)) {
      shown += replacement;
    } else {
      shown += text.substr(at, character->length);
    }
    at += character ? character->length : 1;
  }
  return shown;
}

std::size_t displayWidth(std::string_view text) {
  std::size_t width = 0;
  for (std::size_t at = 0; at < text.size();) {
    const auto character = decodeAt(text, at).value_or(DecodedCharacter{});
    width += columnsOf(character.codePoint);
    at += character.length;
  }
  return width;
}

std::string clipped(std::string_view text, std::size_t columns) {
  std::size_t width = 0;
  std::size_t keep = 0;  // bytes that fit beside the ellipsis
  for (std::size_t at = 0; at < text.size();) {
    const auto character = decodeAt(text, at).value_or(DecodedCharacter{});
    width += columnsOf(character.codePoint);
    if (width > columns) return std::string(text.substr(0, keep)).append(ellipsis);
    at += character.length;
    if (width < columns) keep = at;
  }
  return std::string(text);
}

std::string torqueText(StatedTorque torque, int significant) {
  return writeRounded(torque.value, significant) + ' ' + std::string(unitCode(torque.unit));
}

}  // namespace steadyturn
