#include "utf8.h"

#include <cstddef>

namespace steadyturn {
namespace {

unsigned byteAt(std::string_view bytes, std::size_t at) { return static_cast<unsigned char>(bytes[at]); }

// What may follow a lead byte: how many bytes, and the range of the first of them, which is what keeps overlong
// forms and surrogates out (RFC 3629, 4).
struct Tail {
  std::size_t length;
  unsigned low, high;
};

Tail tailOf(unsigned lead) {
  if (lead >= 0xC2 && lead <= 0xDF) return {1, 0x80, 0xBF};
  if (lead == 0xE0) return {2, 0xA0, 0xBF};
  if (lead == 0xED) return {2, 0x80, 0x9F};
  if (lead >= 0xE1 && lead <= 0xEF) return {2, 0x80, 0xBF};
  if (lead == 0xF0) return {3, 0x90, 0xBF};
  if (lead >= 0xF1 && lead <= 0xF3) return {3, 0x80, 0xBF};
  if (lead == 0xF4) return {3, 0x80, 0x8F};
  return {0, 0, 0};
}

}  // namespace

bool isUtf8(std::string_view bytes) {
  std::size_t at = 0;
  while (at < bytes.size()) {
    const unsigned lead = byteAt(bytes, at++);
    if (lead < 0x80) continue;
    const Tail tail = tailOf(lead);
    if (tail.length == 0 || bytes.size() - at < tail.length) return false;
    if (byteAt(bytes, at) < tail.low || byteAt(bytes, at) > tail.high) return false;
    for (std::size_t i = 1; i < tail.length; ++i) {
      if ((byteAt(bytes, at + i) & 0xC0) != 0x80) return false;
    }
    at += tail.length;
  }
  return true;
}

}  // namespace steadyturn
