// Exact bounds of a share from a count (C. J. Clopper and E. S. Pearson 1934, Biometrika 26): beta quantiles.
#pragma once

#include <cstddef>

#include "drift.h"

namespace steadyturn {

// Two-sided. REQUIRES: successes ≤ trials, trials > 0, 0 < confidence < 1.
Interval clopperPearson(std::size_t successes, std::size_t trials, double confidence);

}  // namespace steadyturn
