// From a tester's bytes to readings for the focused cell, and everything else that came, told.
#pragma once

#include <chrono>

#include "line_assembler.h"
#include "tester_pattern.h"

namespace steadyturn {

enum class TesterEventKind {
  Reading,      // to be put in the cell
  NoPeak,       // a line as the pattern has it, but not marked as a peak: a running value
  SecondPress,  // the same line again within a moment: the button bounced, or was pressed twice
  NotUnderstood,
  TooLong,  // noise without line ends
  HalfLine  // the device went away within a line
};

struct TesterEvent {
  TesterEventKind kind;
  std::string line{};       // as sent; empty for TooLong
  TesterReading reading{};  // of Reading, NoPeak and SecondPress
  Problems problems{};      // of NotUnderstood
};

class TesterFeed {
 public:
  using Time = std::chrono::milliseconds;  // since any moment that stays the same
  // A line that equals the one before it and comes within `moment` after it is a second press.
  explicit TesterFeed(TesterPattern pattern, Time moment = Time(400));

  std::vector<TesterEvent> take(std::string_view bytes, Time now);
  // The device is gone; a half line that stood there is told.
  std::vector<TesterEvent> unplugged();

 private:
  TesterEvent eventFor(std::string line, Time now);

  TesterPattern pattern_;
  Time moment_;
  LineAssembler lines_;
  std::string lastLine_;
  std::optional<Time> lastAt_;
};

}  // namespace steadyturn
