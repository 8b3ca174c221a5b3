#include "slope_sums.h"

#include <cmath>

namespace steadyturn {

void SlopeSums::addFirstOfSegment(double x, double y) {
  ++count;
  ++segments;
  newest = {.count = 1, .x = x, .y = y};
}

// B. P. Welford 1962, Technometrics 4: means and sums of squares in one pass without cancellation.
void SlopeSums::add(double x, double y) {
  if (count == 0) return addFirstOfSegment(x, y);
  const double before = static_cast<double>(newest.count);
  ++count;
  ++newest.count;
  const double now = static_cast<double>(newest.count);
  const double dx = x - newest.x;
  const double dy = y - newest.y;
  newest.x += dx / now;
  newest.y += dy / now;
  xx += dx * (x - newest.x);
  xy += dx * (y - newest.y);
  yy += dy * (y - newest.y);
  logSizes += std::log(now / before);
}

SlopeSums sumsOf(std::span<const double> x, std::span<const double> y, std::span<const std::size_t> sizes) {
  SlopeSums sums;
  for (const std::size_t size : sizes) {
    for (std::size_t i = 0; i < size; ++i) {
      const double atX = x[sums.count];
      const double atY = y[sums.count];
      i == 0 ? sums.addFirstOfSegment(atX, atY) : sums.add(atX, atY);
    }
  }
  return sums;
}

}  // namespace steadyturn
