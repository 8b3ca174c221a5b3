#include "control_chart.h"

#include <cmath>
#include <numeric>

namespace steadyturn {
namespace {

// Expected range of two values from a normal law with σ = 1, as the handbook's table has it.
constexpr double d2 = 1.128;
constexpr double sigmas = 3;

double mean(std::span<const double> values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

ControlChart chartOf(std::vector<double> values, ControlLimits limits) {
  ControlChart chart{.values = std::move(values), .limits = limits, .outside = {}};
  for (std::size_t i = 0; i < chart.values.size(); ++i) {
    if (chart.values[i] < limits.low || chart.values[i] > limits.high) chart.outside.push_back(i);
  }
  return chart;
}

}  // namespace

std::optional<double> movingRangeSigma(std::span<const double> values) {
  if (values.size() < 2) return std::nullopt;
  double ranges = 0;
  for (std::size_t i = 1; i < values.size(); ++i) ranges += std::abs(values[i] - values[i - 1]);
  return ranges / static_cast<double>(values.size() - 1) / d2;
}

std::optional<ControlChart> individualsChart(std::span<const double> values) {
  const auto sigma = movingRangeSigma(values);
  if (!sigma) return std::nullopt;
  const double centre = mean(values);
  const double reach = sigmas * *sigma;
  return chartOf({values.begin(), values.end()}, {.centre = centre, .low = centre - reach, .high = centre + reach});
}

ControlChart ewmaChart(std::span<const double> values, const EwmaRule& rule) {
  std::vector<double> smoothed;
  smoothed.reserve(values.size());
  double level = rule.start;
  for (const double value : values) {
    level = rule.weight * value + (1 - rule.weight) * level;
    smoothed.push_back(level);
  }
  const double reach = sigmas * rule.sigma * std::sqrt(rule.weight / (2 - rule.weight));
  return chartOf(std::move(smoothed), {.centre = rule.start, .low = rule.start - reach, .high = rule.start + reach});
}

}  // namespace steadyturn
