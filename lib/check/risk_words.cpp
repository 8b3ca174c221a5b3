#include "risk_words.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace steadyturn {
namespace {

// 37 → 35, 120 → 120, 2 345 → 2 300: nobody weighs "1 in 2 345" otherwise than "1 in 2 300".
int roundedCount(double count) {
  if (count < 20) return static_cast<int>(std::lround(count));
  const double step = count < 100 ? 5 : std::pow(10.0, std::floor(std::log10(count)) - 1);
  return static_cast<int>(std::lround(count / step) * std::lround(step));
}

std::string grouped(int count) {
  return count < 1000 ? std::to_string(count) : fmt::format("{},{:03}", count / 1000, count % 1000);
}

}  // namespace

std::string chanceInWords(double probability) {
  if (probability < 1e-4) return "less than 1 in 10,000";
  if (probability < 0.15) return fmt::format("about 1 in {}", grouped(roundedCount(1 / probability)));
  if (probability < 0.95) return fmt::format("about {} in 10", std::clamp(std::lround(probability * 10), 2L, 9L));
  return "nearly certain";
}

std::optional<PassRisk> passRisk(const CheckResult& result) {
  const auto worst = std::ranges::min_element(result.points, {}, &PointResult::conformityProbability);
  if (worst == result.points.end()) return std::nullopt;
  return PassRisk{.target = worst->target, .probability = 1 - worst->conformityProbability};
}

std::string riskInWords(Verdict verdict, StatedTorque target, double conformityProbability, double limitPercent,
                        bool sourcesMissing) {
  const bool passes = verdict <= Verdict::ConditionalPass;
  const auto limit = writeRounded(limitPercent);
  std::string words =
      passes ? fmt::format(
                   "The chance that this pass is wrong is {}: at {} the true mean deviation may lie outside ±{} %.",
                   chanceInWords(1 - conformityProbability), writeTorque(target), limit)
             : fmt::format("The chance that the true mean deviation at {} lies within ±{} % after all is {}.",
                           writeTorque(target), limit, chanceInWords(conformityProbability));
  if (sourcesMissing) {
    words += " Parts of the uncertainty are not evaluated and count as 0, so the true chance may be ";
    words += passes ? "larger." : "another.";
  }
  return words;
}

std::string riskInWords(const CheckResult& result) {
  if (result.points.empty()) return {};
  // Among the set-points that make the verdict: a simple fail by one stray reading is spoken of where it happened.
  const PointResult* worst = nullptr;
  for (const auto& point : result.points) {
    if (point.verdict != result.verdict) continue;
    if (worst == nullptr || point.conformityProbability < worst->conformityProbability) worst = &point;
  }
  if (worst == nullptr) return {};
  return riskInWords(result.verdict, worst->target, worst->conformityProbability, result.limitPercent,
                     !result.notEvaluated.empty());
}

}  // namespace steadyturn
