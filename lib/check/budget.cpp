#include "budget.h"

#include <cmath>
#include <numbers>

namespace steadyturn {
namespace {

// A rectangular distribution of this full width (JCGM 100:2008, 4.3.7).
double rectangular(double fullWidth) { return fullWidth / 2 / std::numbers::sqrt3; }

std::optional<double> rectangular(std::optional<double> fullWidth) {
  return fullWidth ? std::optional(rectangular(*fullWidth)) : std::nullopt;
}

}  // namespace

Budget budgetOf(const CheckInput& check, StatedTorque target, std::optional<double> repeatability,
                std::size_t readings) {
  std::optional<double> step;
  if (check.resolution) step = check.resolution->in(target.unit) / target.value * 100;
  if (repeatability) *repeatability /= std::sqrt(static_cast<double>(readings));

  Budget budget;
  double sumOfSquares = 0;
  const auto add = [&](std::string_view source, std::optional<double> uncertainty) {
    if (!uncertainty) budget.notEvaluated.push_back(source);
    budget.entries.push_back({.source = source, .standardUncertaintyPercent = uncertainty.value_or(0)});
    sumOfSquares += uncertainty.value_or(0) * uncertainty.value_or(0);
  };
  add("reference", check.reference.expandedPercent / check.reference.coverageFactor);
  add("resolution", rectangular(step));
  add("reproducibility", rectangular(check.variation.reproducibility));
  add("drive", rectangular(check.variation.drive));
  add("interface", rectangular(check.variation.interface));
  add("loading_point", rectangular(check.variation.loadingPoint));
  add("repeatability", repeatability);
  budget.standardUncertaintyPercent = std::sqrt(sumOfSquares);
  return budget;
}

double mean(std::span<const double> values) {
  double shifted = 0;
  for (double value : values) shifted += value - values.front();
  return values.front() + shifted / static_cast<double>(values.size());
}

std::optional<double> standardDeviation(std::span<const double> values) {
  if (values.size() < 2) return std::nullopt;
  const double centre = mean(values);
  double squares = 0;
  for (double value : values) squares += (value - centre) * (value - centre);
  return std::sqrt(squares / static_cast<double>(values.size() - 1));
}

}  // namespace steadyturn
