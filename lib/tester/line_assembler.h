// Bytes from a serial line, in whatever chunks they come, into complete lines.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace steadyturn {

// A line ends with CR, LF or CRLF; empty ones are passed over. A line longer than the longest is noise (a wrong
// speed, an unplugged end): it is dropped as a whole and counted. How the bytes are chunked makes no difference.
class LineAssembler {
 public:
  explicit LineAssembler(std::size_t longest = 200);

  // The lines that these bytes complete.
  std::vector<std::string> take(std::string_view bytes);
  // The device is gone: what stood in the half line, which never becomes a reading. Empty when nothing did.
  std::string unplugged();
  // Lines dropped for their length so far.
  std::size_t dropped() const { return dropped_; }

 private:
  void end(std::vector<std::string>& lines);

  std::size_t longest_;
  std::string line_;
  bool tooLong_ = false;
  std::size_t dropped_ = 0;
};

}  // namespace steadyturn
