#include "utf8.h"

namespace steadyturn {
namespace {

unsigned byteAt(std::string_view text, std::size_t at) { return static_cast<unsigned char>(text[at]); }

// Length and smallest code point that a lead byte announces; a smaller one is an overlong form.
struct Lead {
  std::size_t length;
  char32_t bits;
  char32_t smallest;
};

std::optional<Lead> leadOf(unsigned byte) {
  if (byte < 0x80) return Lead{1, byte, 0};
  if (byte >= 0xC2 && byte <= 0xDF) return Lead{2, byte & 0x1F, 0x80};
  if (byte >= 0xE0 && byte <= 0xEF) return Lead{3, byte & 0x0F, 0x800};
  if (byte >= 0xF0 && byte <= 0xF4) return Lead{4, byte & 0x07, 0x10000};
  return std::nullopt;
}

}  // namespace

std::optional<DecodedCharacter> decodeAt(std::string_view text, std::size_t at) {
  const auto lead = leadOf(byteAt(text, at));
  if (!lead || at + lead->length > text.size()) return std::nullopt;
  char32_t codePoint = lead->bits;
  for (std::size_t i = 1; i < lead->length; ++i) {
    const unsigned byte = byteAt(text, at + i);
    if ((byte & 0xC0) != 0x80) return std::nullopt;
    codePoint = (codePoint << 6) | (byte & 0x3F);
  }
  const bool surrogate = codePoint >= 0xD800 && codePoint <= 0xDFFF;
  if (codePoint < lead->smallest || codePoint > 0x10FFFF || surrogate) return std::nullopt;
  return DecodedCharacter{codePoint, lead->length};
}

std::optional<std::size_t> firstBadByte(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const auto character = decodeAt(text, at);
    if (!character) return at;
    at += character->length;
  }
  return std::nullopt;
}

}  // namespace steadyturn
