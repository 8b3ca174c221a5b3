#include "tester_pattern.h"

#include <algorithm>
#include <array>
#include <utility>

#include "line_assembler.h"

namespace steadyturn {
namespace {

using Kind = PatternPiece::Kind;

constexpr std::array<std::pair<std::string_view, Kind>, 5> fields{{
    {"value", Kind::Value},
    {"unit", Kind::Unit},
    {"mark", Kind::Mark},
    {"skip", Kind::Skip},
    {"rest", Kind::Rest},
}};

bool isBlank(char c) { return c == ' ' || c == '\t'; }
bool isWord(Kind kind) { return kind == Kind::Mark || kind == Kind::Skip; }

tl::unexpected<Problems> notAPattern(std::string_view found, std::string accepted) {
  return refuse({.field = "pattern", .found = std::string(found), .accepted = std::move(accepted)});
}

// Takes one piece off the front of `typed`.
Result<PatternPiece> takePiece(std::string_view& typed) {
  if (isBlank(typed.front())) {
    while (!typed.empty() && isBlank(typed.front())) typed.remove_prefix(1);
    return PatternPiece{.kind = Kind::Space};
  }
  if (typed.front() == '{' && !typed.starts_with("{{")) {
    const auto close = typed.find('}');
    if (close == std::string_view::npos) return notAPattern(typed, "a field closed with }; a brace itself is {{");
    const auto name = typed.substr(1, close - 1);
    const auto* field = std::ranges::find(fields, name, [](const auto& known) { return known.first; });
    if (field == fields.end()) return notAPattern(name, "{value}, {unit}, {mark}, {skip} or {rest}");
    typed.remove_prefix(close + 1);
    return PatternPiece{.kind = field->second};
  }
  PatternPiece piece{.kind = Kind::Text};
  while (!typed.empty() && !isBlank(typed.front())) {
    if (typed.starts_with("{{")) {
      typed.remove_prefix(1);
    } else if (typed.front() == '{') {
      break;
    }
    piece.text += typed.front();
    typed.remove_prefix(1);
  }
  return piece;
}

std::ptrdiff_t countOf(const TesterPattern& pattern, Kind kind) {
  return std::ranges::count(pattern.pieces, kind, &PatternPiece::kind);
}

Result<TesterPattern> checked(TesterPattern pattern, std::string_view typed) {
  if (countOf(pattern, Kind::Value) != 1) return notAPattern(typed, "{value} once");
  if (countOf(pattern, Kind::Unit) > 1 || countOf(pattern, Kind::Mark) > 1)
    return notAPattern(typed, "{unit} and {mark} once at most");
  const auto rest = std::ranges::find(pattern.pieces, Kind::Rest, &PatternPiece::kind);
  if (rest != pattern.pieces.end() && std::next(rest) != pattern.pieces.end())
    return notAPattern(typed, "{rest} at the end");
  const auto twoWords = std::ranges::adjacent_find(
      pattern.pieces, [](const auto& a, const auto& b) { return isWord(a.kind) && isWord(b.kind); });
  if (twoWords != pattern.pieces.end()) return notAPattern(typed, "a space or a sign between two words");
  if (!pattern.peakMark.empty() && countOf(pattern, Kind::Mark) == 0) {
    return refuse(
        {.field = "peak mark", .found = pattern.peakMark, .accepted = "a pattern with {mark}, or no peak mark"});
  }
  return pattern;
}

// A line being matched: what is left of it, and what was found.
class Match {
 public:
  explicit Match(std::string_view line) : left_(line) {
    while (!left_.empty() && isBlank(left_.front())) left_.remove_prefix(1);
    while (!left_.empty() && isBlank(left_.back())) left_.remove_suffix(1);
  }

  // Null: matched. Else what the pattern has at this place.
  const char* take(const PatternPiece& piece, const PatternPiece* next) {
    switch (piece.kind) {
      case Kind::Text:
        if (!left_.starts_with(piece.text)) return piece.text.c_str();
        left_.remove_prefix(piece.text.size());
        return nullptr;
      case Kind::Space:
        while (!left_.empty() && isBlank(left_.front())) left_.remove_prefix(1);
        return nullptr;
      case Kind::Value:
        return takeValue() ? nullptr : "a number such as 12.5";
      case Kind::Unit:
        return takeUnit() ? nullptr : "a torque unit such as N·m";
      case Kind::Mark:
        reading.mark = takeWord(next);
        return reading.mark.empty() ? "a word" : nullptr;
      case Kind::Skip:
        return takeWord(next).empty() ? "a word" : nullptr;
      case Kind::Rest:
        left_ = {};
        return nullptr;
    }
    return nullptr;
  }

  std::string_view left() const { return left_; }
  TesterReading reading;

 private:
  std::string_view digits() {
    const auto count = std::min(left_.find_first_not_of("0123456789"), left_.size());
    const auto taken = left_.substr(0, count);
    left_.remove_prefix(count);
    return taken;
  }

  bool takeValue() {
    if (left_.starts_with('+') || left_.starts_with('-')) {
      reading.negative = left_.front() == '-';
      left_.remove_prefix(1);
      // Testers pad between sign and digits.
      while (!left_.empty() && isBlank(left_.front())) left_.remove_prefix(1);
    }
    const auto* begin = left_.data();
    auto count = digits().size();
    if (left_.starts_with('.') || left_.starts_with(',')) {
      left_.remove_prefix(1);
      count += digits().size();
    }
    reading.value.assign(begin, left_.data());
    return count > 0;
  }

  // The longest piece that reads as a unit: "N m" before "N", "lbf·ft" before "lbf".
  bool takeUnit() {
    constexpr std::size_t longestUnit = 16;
    for (auto length = std::min(left_.size(), longestUnit); length > 0; --length) {
      const auto piece = left_.substr(0, length);
      if (isBlank(piece.back())) continue;
      if (const auto unit = parseUnit(piece)) {
        reading.unit = unit;
        left_.remove_prefix(length);
        return true;
      }
    }
    return false;
  }

  // Up to a blank, or to where the next piece begins.
  std::string takeWord(const PatternPiece* next) {
    std::size_t length = 0;
    while (length < left_.size() && !isBlank(left_[length]) && !begins(next, left_.substr(length))) ++length;
    std::string word(left_.substr(0, length));
    left_.remove_prefix(length);
    return word;
  }

  static bool begins(const PatternPiece* next, std::string_view at) {
    if (next == nullptr) return false;
    if (next->kind == Kind::Text) return at.starts_with(next->text);
    return next->kind == Kind::Value && std::string_view("+-.,0123456789").find(at.front()) != std::string_view::npos;
  }

  std::string_view left_;
};

tl::unexpected<Problems> noMatch(std::string_view found, std::string accepted) {
  while (!found.empty() && isBlank(found.front())) found.remove_prefix(1);
  return refuse({.field = "line", .found = std::string(found), .accepted = std::move(accepted)});
}

}  // namespace

Result<TesterPattern> parsePattern(std::string_view typed, std::string_view peakMark) {
  TesterPattern pattern{.pieces = {}, .peakMark = std::string(peakMark)};
  auto left = typed;
  while (!left.empty()) {
    auto piece = takePiece(left);
    if (!piece) return tl::unexpected(piece.error());
    pattern.pieces.push_back(std::move(*piece));
  }
  return checked(std::move(pattern), typed);
}

Result<TesterReading> parseTesterLine(const TesterPattern& pattern, std::string_view line) {
  Match match(line);
  for (auto piece = pattern.pieces.begin(); piece != pattern.pieces.end(); ++piece) {
    const auto* next = std::next(piece) == pattern.pieces.end() ? nullptr : &*std::next(piece);
    const auto before = match.left();
    if (const char* wanted = match.take(*piece, next)) return noMatch(before, wanted);
  }
  if (!match.left().empty()) return noMatch(match.left(), "the end of the line");
  match.reading.peak = pattern.peakMark.empty() || match.reading.mark == pattern.peakMark;
  return std::move(match.reading);
}

std::vector<TriedLine> tryPattern(const TesterPattern& pattern, std::string_view sample) {
  LineAssembler assembler;
  auto lines = assembler.take(sample);
  // A pasted line needs no end.
  if (auto last = assembler.unplugged(); !last.empty()) lines.push_back(std::move(last));
  std::vector<TriedLine> tried;
  for (auto& line : lines) {
    auto reading = parseTesterLine(pattern, line);
    tried.push_back({.line = std::move(line), .reading = std::move(reading)});
  }
  return tried;
}

}  // namespace steadyturn
