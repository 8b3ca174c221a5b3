// How a torque tester writes a reading, as a template that a person can read and set: "{mark} {value} {unit}".
//
//   {value}  the reading: digits with '.' or ',', perhaps a sign (needed, once)
//   {unit}   a torque unit as people and devices write it: "N·m", "Nm", "ft-lb" …
//   {mark}   a word that tells what the line is: the tester's sign for a peak, for instance
//   {skip}   any one word
//   {rest}   whatever follows, to the end of the line
//   {{       a brace
//
// A space stands for any number of spaces and tabs, none included; everything else stands for itself. Spaces around a
// line do not count. Matching goes from left to right without going back, so no line takes longer than its length
// asks.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "problem.h"
#include "unit.h"

namespace steadyturn {

struct PatternPiece {
  enum class Kind { Text, Space, Value, Unit, Mark, Skip, Rest };
  Kind kind;
  std::string text{};  // of Text
};

struct TesterPattern {
  std::vector<PatternPiece> pieces;
  std::string peakMark;  // what {mark} says of a peak; empty: every line that matches is a reading
};

// Problems name "pattern" (a field that there isn't, {value} missing, a field twice, a brace left open, something
// after {rest}, two words with nothing between them) and "peak mark" (one given, but no {mark} in the pattern).
Result<TesterPattern> parsePattern(std::string_view typed, std::string_view peakMark = {});

struct TesterReading {
  std::string value;         // as sent, without its sign: '.' or ',' as it came
  bool negative = false;     // a tester that tells directions apart sends the other one with a minus
  std::optional<Unit> unit;  // absent: the pattern has none
  std::string mark;          // empty: the pattern has none
  bool peak = true;          // mark is the peak mark, or the pattern asks for none
};

// The reading in a line, or why there is none: the problem's field is "line", found what stands there, accepted what
// the pattern has there.
Result<TesterReading> parseTesterLine(const TesterPattern& pattern, std::string_view line);

// A pattern tried on pasted sample text, line by line.
struct TriedLine {
  std::string line;
  Result<TesterReading> reading;
};
std::vector<TriedLine> tryPattern(const TesterPattern& pattern, std::string_view sample);

}  // namespace steadyturn
