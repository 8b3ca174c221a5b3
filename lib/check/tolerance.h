// Comparing a computed figure with a limit.
#pragma once

namespace steadyturn {

// Whether a figure in % keeps a limit in %. A reading that stands exactly at the limit passes, but the figure
// comes out of a division in binary: 104 against 100 may give 4.000000000000001. A difference below 1e-9 %
// is that noise; it is a million times finer than any reference can tell.
constexpr bool atMost(double figure, double limit) { return figure <= limit + 1e-9; }

}  // namespace steadyturn
