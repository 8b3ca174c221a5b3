// Control charts of a tool's checks: is it still behaving as it has so far? Two questions for one series of mean
// deviations: did one check fall out of line (individuals chart), and do they creep to one side (EWMA chart)?
// Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 and 6.3.2.4 (formulas and examples from memory).
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace steadyturn {

struct ControlLimits {
  double centre = 0, low = 0, high = 0;
};

struct ControlChart {
  std::vector<double> values;  // what is plotted, one for each value given
  ControlLimits limits;
  std::vector<std::size_t> outside;  // indices of values beyond the limits, rising
};

// x̄ ± 3 σ with σ from movingRangeSigma(). Absent with fewer than two values. REQUIRES: every value finite.
std::optional<ControlChart> individualsChart(std::span<const double> values);

// σ = the mean of |xᵢ − xᵢ₋₁|, divided by d₂ = 1.128 (two values a range). Absent with fewer than two values.
std::optional<double> movingRangeSigma(std::span<const double> values);

struct EwmaRule {
  double weight = 0.3;  // λ of the newest value, 0 < λ ≤ 1; the handbook: usually 0.2 to 0.3
  double start = 0;     // EWMA₀, the process's mean or target
  double sigma = 0;     // ≥ 0, of single values
};
// EWMAₜ = λ xₜ + (1 − λ) EWMAₜ₋₁; limits start ± 3 σ √(λ / (2 − λ)). REQUIRES: every value finite, the rule as said.
ControlChart ewmaChart(std::span<const double> values, const EwmaRule& rule);

// Below this many values the limits are provisional: common practice asks for 20 to 25 before they are trusted.
inline constexpr std::size_t settledCount = 20;

}  // namespace steadyturn
