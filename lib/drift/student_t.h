// Student's t and the normal distribution behind one door: absent degrees of freedom count as infinite.
// Never throws; far tails are computed as tails, not as one minus nearly one.
#pragma once

#include <optional>

namespace steadyturn {

double studentLower(double t, std::optional<double> degreesOfFreedom);  // P(T < t)
double studentUpper(double t, std::optional<double> degreesOfFreedom);  // P(T > t)

// The t with P(|T| ≤ t) = confidence. REQUIRES: 0 < confidence < 1.
double studentQuantile(double confidence, std::optional<double> degreesOfFreedom);

}  // namespace steadyturn
