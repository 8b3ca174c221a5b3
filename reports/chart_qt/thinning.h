// Thinning a crowd of points to what pixels can show.
#pragma once

#include <cstddef>
#include <vector>

#include "axis_ticks.h"

namespace steadyturn {

// Which points to draw over `columns` (> 0) pixel columns that cover `range`: in each column those with the lowest
// and the highest value and those whose bars reach lowest and highest, and the first and last point; indices rise.
// All of them when there are no more than two a column. Of points outside the range the last before it and the first
// after it are kept, so that a line runs on to the edge. REQUIRES: dates that do not fall.
std::vector<std::size_t> thin(const std::vector<ChartPoint>& points, const Passage& across, AxisRange range,
                              int columns);

}  // namespace steadyturn
