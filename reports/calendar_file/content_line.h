// Content lines of an iCalendar file (RFC 5545, 3.1) and the TEXT values in them (3.3.11).
#pragma once

#include <string>
#include <string_view>

namespace steadyturn {

// Backslash, semicolon and comma get a backslash; a line break of any kind becomes "\n". Other control characters,
// which TEXT may not hold, become blanks.
std::string escapeText(std::string_view text);

// The line with its CRLF, folded so that no part is longer than 75 octets without its line break. A character of more
// octets than one is never split. REQUIRES: no line break in `line`.
std::string contentLine(std::string_view line);

}  // namespace steadyturn
