// UTF-8 as bytes (RFC 3629): is it well formed, and which characters does it hold.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace steadyturn {

struct DecodedCharacter {
  char32_t codePoint = 0;
  std::size_t length = 1;  // bytes
};

// The character that begins at `at`; nothing where the bytes are not UTF-8 (overlong forms and surrogates included).
// REQUIRES: at < text.size().
std::optional<DecodedCharacter> decodeAt(std::string_view text, std::size_t at);

// Where the first byte stands that is not UTF-8; nothing when all is well.
std::optional<std::size_t> firstBadByte(std::string_view text);

}  // namespace steadyturn
