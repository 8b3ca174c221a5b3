#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

#include "check.h"
#include "tolerance.h"

namespace steadyturn {
namespace {

constexpr std::array<std::pair<DecisionRule, std::string_view>, 2> ruleNames{{
    {DecisionRule::Simple, "simple"},
    {DecisionRule::Guarded, "guarded"},
}};

constexpr std::array<std::pair<Verdict, std::string_view>, 4> verdictNames{{
    {Verdict::Pass, "pass"},
    {Verdict::ConditionalPass, "conditional pass"},
    {Verdict::ConditionalFail, "conditional fail"},
    {Verdict::Fail, "fail"},
}};

template <typename Names, typename Value>
std::string_view nameOf(const Names& names, Value value) {
  return names[static_cast<std::size_t>(value)].second;
}

template <typename Names>
auto valueOf(const Names& names, std::string_view typed, std::string_view field)
    -> Result<typename Names::value_type::first_type> {
  std::string accepted;
  for (const auto& [value, name] : names) {
    if (name == typed) return value;
    accepted.append(accepted.empty() ? "" : ", ").append(name);
  }
  return refuse({.field = std::string(field), .found = std::string(typed), .accepted = accepted});
}

// P(Z > z). erfc keeps its digits far out in the tail, where 1 − Φ would be 0.
double upperTail(double z) { return std::erfc(z / std::numbers::sqrt2) / 2; }

}  // namespace

std::string_view writeRule(DecisionRule rule) { return nameOf(ruleNames, rule); }

Result<DecisionRule> parseRule(std::string_view typed) { return valueOf(ruleNames, typed, "rule"); }

std::string_view writeVerdict(Verdict verdict) { return nameOf(verdictNames, verdict); }

Result<Verdict> parseVerdict(std::string_view typed) { return valueOf(verdictNames, typed, "verdict"); }

double conformityProbability(double estimate, double standardUncertainty, double low, double high) {
  if (standardUncertainty == 0) return atMost(low, estimate) && atMost(estimate, high) ? 1 : 0;
  const double fromLow = (low - estimate) / standardUncertainty;
  const double toHigh = (high - estimate) / standardUncertainty;
  // Both limits on one side of the estimate: subtract the two small tails, not two numbers near 1.
  const double probability = fromLow > 0  ? upperTail(fromLow) - upperTail(toHigh)
                             : toHigh < 0 ? upperTail(-toHigh) - upperTail(-fromLow)
                                          : 1 - upperTail(-fromLow) - upperTail(toHigh);
  return std::clamp(probability, 0.0, 1.0);
}

Verdict decide(DecisionRule rule, double meanDeviation, double expandedUncertainty, double limit, bool withinLimit) {
  if (rule == DecisionRule::Simple) return withinLimit ? Verdict::Pass : Verdict::Fail;
  const double size = std::abs(meanDeviation);
  if (!atMost(size, limit + expandedUncertainty)) return Verdict::Fail;
  if (!withinLimit || !atMost(size, limit)) return Verdict::ConditionalFail;
  return atMost(size, limit - expandedUncertainty) ? Verdict::Pass : Verdict::ConditionalPass;
}

}  // namespace steadyturn
