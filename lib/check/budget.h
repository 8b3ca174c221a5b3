// The uncertainty budget of one set-point (ISO 6789-2:2017): seven relative standard uncertainties in % of the
// reference value.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "check.h"

namespace steadyturn {

struct Budget {
  std::vector<BudgetEntry> entries;            // all seven; one that was not evaluated stands at 0
  std::vector<std::string_view> notEvaluated;  // their names
  double standardUncertaintyPercent = 0;       // w, root of the sum of squares
};

// `repeatability` is the sample standard deviation of the deviations, %, of `readings` readings.
Budget budgetOf(const CheckInput& check, StatedTorque target, std::optional<double> repeatability,
                std::size_t readings);

// Exactly the value when all are alike: the first is subtracted before summing. REQUIRES: not empty.
double mean(std::span<const double> values);

// Sample standard deviation, n − 1; absent with one value. Exactly 0 when all are alike.
std::optional<double> standardDeviation(std::span<const double> values);

}  // namespace steadyturn
