#include "reading_question.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "check.h"

namespace steadyturn {
namespace {

constexpr double farOutside = 4;  // × limit
constexpr double inside = 1.5;    // × limit

struct Expectation {
  StatedTorque target;
  double limitPercent = 0;
  std::optional<double> median;  // of the other readings

  double awayFromTarget(double reading) const { return std::abs(deviationPercent(target.value, reading)); }
  double away(double reading) const {
    const double fromTarget = awayFromTarget(reading);
    return median ? std::min(fromTarget, std::abs(deviationPercent(*median, reading))) : fromTarget;
  }
};

// The likeliest question so far. Of two as near, the first asked stays.
class Likeliest {
 public:
  explicit Likeliest(double furthest) : nearest_(furthest) {}
  void offer(double away, ReadingQuestion question) {
    if (!(away < nearest_ - noise) && (found_ || away > nearest_)) return;
    nearest_ = away;
    found_ = std::move(question);
  }
  std::optional<ReadingQuestion> found() const { return found_; }

 private:
  // 2000 cN·m and 20.00 N·m are one torque; which of two questions is nearer must not hang on the last binary digit.
  static constexpr double noise = 1e-9;
  double nearest_;
  std::optional<ReadingQuestion> found_;
};

bool isDigit(char c) { return c >= '0' && c <= '9'; }

// As many digits as were typed, three at least, so that an offer looks like a reading.
std::string likeTyped(double value, std::string_view typed) {
  return writeRounded(value,
                      static_cast<int>(std::clamp<std::ptrdiff_t>(std::ranges::count_if(typed, isDigit), 3, 6)));
}

void askForUnits(Likeliest& likeliest, std::string_view typed, double value, const Expectation& expected) {
  const auto own = expected.target.unit;
  for (const Unit other : allUnits) {
    if (other == own) continue;
    const StatedTorque meant{StatedTorque{value, other}.in(own), own};
    likeliest.offer(expected.awayFromTarget(meant.value),
                    {.kind = QuestionKind::ReadInOtherUnit,
                     .wouldBe = meant,
                     .text = fmt::format("{} {} would be {} {}", typed, unitSign(other),
                                         likeTyped(meant.value, typed), unitSign(own))});
    const StatedTorque there{StatedTorque{value, own}.in(other), other};
    likeliest.offer(std::abs(deviationPercent(expected.target.value, there.value)),
                    {.kind = QuestionKind::SetInOtherUnit,
                     .wouldBe = there,
                     .text = fmt::format("{} {} would be {} {}: was the tool set in {}?", typed, unitSign(own),
                                         likeTyped(there.value, typed), unitSign(other), unitSign(other))});
  }
}

void askForSlip(Likeliest& likeliest, QuestionKind kind, std::string_view typed, std::string meant,
                const Expectation& expected) {
  const auto value = parseTorqueNumber(meant, "reading");
  if (!value || *value == 0) return;
  const StatedTorque wouldBe{*value, expected.target.unit};
  const auto unit = unitSign(wouldBe.unit);
  const char* slip = kind == QuestionKind::ShiftedPoint   ? "a shifted decimal point"
                     : kind == QuestionKind::DoubledDigit ? "a doubled digit"
                                                          : "a lost digit";
  likeliest.offer(expected.away(wouldBe.value),
                  {.kind = kind,
                   .wouldBe = wouldBe,
                   .text = fmt::format("{} {} would be {} {} but for {}", typed, unit, meant, unit, slip)});
}

void askForSlips(Likeliest& likeliest, std::string_view typed, const std::string& plain, double value,
                 const Expectation& expected) {
  for (const double shifted : {value * 10, value / 10}) {
    askForSlip(likeliest, QuestionKind::ShiftedPoint, typed, writeRounded(shifted, 15), expected);
  }
  for (std::size_t i = 0; i + 1 < plain.size(); ++i) {
    if (!isDigit(plain[i]) || plain[i] != plain[i + 1]) continue;
    askForSlip(likeliest, QuestionKind::DoubledDigit, typed, std::string(plain).erase(i, 1), expected);
  }
}

// One digit anywhere fits much: asked for only where nothing of a fixed factor explains the reading.
void askForLostDigit(Likeliest& likeliest, std::string_view typed, const std::string& plain,
                     const Expectation& expected) {
  for (std::size_t i = 0; i <= plain.size(); ++i) {
    for (char digit = '0'; digit <= '9'; ++digit) {
      askForSlip(likeliest, QuestionKind::LostDigit, typed, std::string(plain).insert(i, 1, digit), expected);
    }
  }
}

std::optional<double> medianOf(std::span<const double> readings) {
  if (readings.size() < 2) return std::nullopt;
  std::vector<double> sorted(readings.begin(), readings.end());
  std::ranges::sort(sorted);
  const auto middle = sorted.size() / 2;
  return sorted.size() % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

}  // namespace

std::optional<ReadingQuestion> questionReading(std::string_view typed, StatedTorque target,
                                               std::span<const double> otherReadings, double limitPercent) {
  std::string plain(typed);
  std::ranges::replace(plain, ',', '.');
  const auto value = parseTorqueNumber(plain, "reading");
  if (!value || *value == 0) return std::nullopt;
  const Expectation expected{target, limitPercent, medianOf(otherReadings)};
  if (expected.awayFromTarget(*value) <= farOutside * limitPercent) return std::nullopt;

  Likeliest likeliest(inside * limitPercent);
  askForUnits(likeliest, typed, *value, expected);
  const bool unlikeTheOthers = expected.away(*value) > farOutside * limitPercent;
  if (unlikeTheOthers) askForSlips(likeliest, typed, plain, *value, expected);
  if (unlikeTheOthers && !likeliest.found()) askForLostDigit(likeliest, typed, plain, expected);
  return likeliest.found();
}

}  // namespace steadyturn
