#include "line_assembler.h"

#include <utility>

namespace steadyturn {

LineAssembler::LineAssembler(std::size_t longest) : longest_(longest) {}

std::vector<std::string> LineAssembler::take(std::string_view bytes) {
  std::vector<std::string> lines;
  for (const char byte : bytes) {
    // The LF of a CRLF ends an empty line, which is passed over.
    if (byte == '\r' || byte == '\n') {
      end(lines);
    } else if (line_.size() == longest_) {
      tooLong_ = true;
    } else {
      line_ += byte;
    }
  }
  return lines;
}

std::string LineAssembler::unplugged() {
  tooLong_ = false;
  return std::exchange(line_, {});
}

void LineAssembler::end(std::vector<std::string>& lines) {
  if (tooLong_) {
    ++dropped_;
  } else if (!line_.empty()) {
    lines.push_back(line_);
  }
  line_.clear();
  tooLong_ = false;
}

}  // namespace steadyturn
