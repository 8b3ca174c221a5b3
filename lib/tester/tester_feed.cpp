#include "tester_feed.h"

#include <utility>

namespace steadyturn {

TesterFeed::TesterFeed(TesterPattern pattern, Time moment) : pattern_(std::move(pattern)), moment_(moment) {}

std::vector<TesterEvent> TesterFeed::take(std::string_view bytes, Time now) {
  std::vector<TesterEvent> events;
  const auto droppedBefore = lines_.dropped();
  for (auto& line : lines_.take(bytes)) events.push_back(eventFor(std::move(line), now));
  for (auto count = droppedBefore; count < lines_.dropped(); ++count)
    events.push_back({.kind = TesterEventKind::TooLong});
  return events;
}

std::vector<TesterEvent> TesterFeed::unplugged() {
  lastAt_.reset();
  auto half = lines_.unplugged();
  if (half.empty()) return {};
  return {{.kind = TesterEventKind::HalfLine, .line = std::move(half)}};
}

TesterEvent TesterFeed::eventFor(std::string line, Time now) {
  auto reading = parseTesterLine(pattern_, line);
  if (!reading)
    return {.kind = TesterEventKind::NotUnderstood, .line = std::move(line), .problems = std::move(reading.error())};
  if (!reading->peak)
    return {.kind = TesterEventKind::NoPeak, .line = std::move(line), .reading = std::move(*reading)};
  const bool again = lastAt_ && line == lastLine_ && now - *lastAt_ <= moment_;
  // Counted from the last one seen, so that a key held down stays one press.
  lastAt_ = now;
  lastLine_ = line;
  return {.kind = again ? TesterEventKind::SecondPress : TesterEventKind::Reading,
          .line = std::move(line),
          .reading = std::move(*reading)};
}

}  // namespace steadyturn
