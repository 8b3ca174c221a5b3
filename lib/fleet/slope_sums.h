// What a fleet needs to know of one tool: sums of squares and products about each segment's own mean. An intercept of
// its own for each segment between adjustments drops out of the restricted likelihood, so these few numbers hold all
// that a tool says of slopes and variances, however long its record. Plain numbers: knows no dates.
#pragma once

#include <cstddef>
#include <span>

#include "common_slope.h"

namespace steadyturn {

struct SlopeSums {
  std::size_t count = 0;     // observations
  std::size_t segments = 0;  // intercepts
  double xx = 0, xy = 0, yy = 0;
  double logSizes = 0;   // sum over the segments of log(observations)
  SegmentMean newest{};  // of the segment that the next check falls into

  // Takes one more check, in the newest segment or as the first of a new one. REQUIRES: x and y finite.
  void add(double x, double y);
  void addFirstOfSegment(double x, double y);

  bool speaksOfSlope() const { return xx > 0; }
  // Differences left when each segment's level is taken out.
  int contrasts() const { return static_cast<int>(count) - static_cast<int>(segments); }
};

// Observations stand segment after segment, the newest segment last; `sizes` says how many each holds.
// REQUIRES: x and y as long as the sum of sizes; every size > 0.
SlopeSums sumsOf(std::span<const double> x, std::span<const double> y, std::span<const std::size_t> sizes);

}  // namespace steadyturn
