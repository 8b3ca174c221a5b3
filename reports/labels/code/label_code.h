// The text in a label's QR code, and its way back when a scanner types it.
//
//   STURN:T:W06
//   STURN   whose code it is, so that a scan is told from anything else that is typed
//   T       what it marks: T, a tool
//   W06     the tool's mark. A-Z, 0-9, '-' and '.' stand for themselves, every other byte of its UTF-8 is %XX, the
//           percent-encoding of RFC 3986, 2.1: "w 6/a" is %77%206%2F%61
//
// Every character is one of QR's alphanumeric set (ISO/IEC 18004, 7.4.4), so the symbol stays small. None is a
// lower-case letter: a scanner with caps lock on, or one that is set to a single case, changes nothing. The mark
// reads without this program, and nothing in it needs a network.
#pragma once

#include <string>
#include <string_view>

#include "problem.h"

namespace steadyturn {

enum class LabelKind { Tool };

struct LabelCode {
  LabelKind kind = LabelKind::Tool;
  std::string id;
  bool operator==(const LabelCode&) const = default;
};

// REQUIRES: id not empty, UTF-8.
std::string writeLabelCode(const LabelCode& code);

// Whether a line was typed by a scanner that read one of our labels: it begins with "STURN:", blanks before it and
// case aside.
bool looksLikeLabelCode(std::string_view typed);

// Reads a code as a scanner types it: any case, blanks and line ends around it. A kind that is not known, a broken
// percent-encoding or an empty mark is refused; the problem's field is "label".
Result<LabelCode> parseLabelCode(std::string_view typed);

}  // namespace steadyturn
