// Any bytes as a torque tester's pattern (the first line) and what the tester sends.
#include "driver.h"
#include "tester_pattern.h"

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace steadyturn;
  const auto text = fuzz::textOf(data, size);
  const auto end = text.find('\n');
  const auto pattern = parsePattern(text.substr(0, end), end % 2 == 0 ? "PEAK" : "");
  if (!pattern) {
    fuzz::promise(!pattern.error().empty(), "a refused pattern says why");
    return 0;
  }
  const auto sent = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
  for (const auto& tried : tryPattern(*pattern, sent)) {
    if (tried.reading) fuzz::promise(!tried.reading->value.empty(), "a reading has a value");
  }
  return 0;
}
