#include "content_line.h"

namespace steadyturn {
namespace {

constexpr std::size_t longestLine = 75;  // octets, RFC 5545, 3.1
constexpr std::size_t longestTail = 3;   // octets of a UTF-8 character after its first, RFC 3629, 3

bool continuesCharacter(char octet) { return (static_cast<unsigned char>(octet) & 0xC0) == 0x80; }

bool isControl(char octet) {
  const auto value = static_cast<unsigned char>(octet);
  return (value < 0x20 && octet != '\t') || value == 0x7F;
}

// Where to cut so that at most `room` octets stand before it and no character is split.
std::size_t cutAt(std::string_view line, std::size_t room) {
  for (std::size_t back = 0; back <= longestTail; ++back) {
    if (!continuesCharacter(line[room - back])) return room - back;
  }
  return room;  // no UTF-8: there is no character to keep whole
}

}  // namespace

std::string escapeText(std::string_view text) {
  std::string escaped;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char octet = text[i];
    if (octet == '\r' && i + 1 < text.size() && text[i + 1] == '\n') continue;
    if (octet == '\n' || octet == '\r') {
      escaped += "\\n";
    } else if (isControl(octet)) {
      escaped += ' ';
    } else {
      if (octet == '\\' || octet == ';' || octet == ',') escaped += '\\';
      escaped += octet;
    }
  }
  return escaped;
}

std::string contentLine(std::string_view line) {
  std::string folded;
  std::size_t room = longestLine;
  while (line.size() > room) {
    const auto cut = cutAt(line, room);
    folded += line.substr(0, cut);
    folded += "\r\n ";
    line.remove_prefix(cut);
    room = longestLine - 1;  // the blank that marks a continuation counts
  }
  folded += line;
  folded += "\r\n";
  return folded;
}

}  // namespace steadyturn
