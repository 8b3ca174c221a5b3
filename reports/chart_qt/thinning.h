// Thinning a crowd of points to what pixels can show.
#pragma once

#include <cstddef>
#include <vector>

#include "axis_ticks.h"

namespace steadyturn {

// Which points to draw over `columns` (> 0) pixel columns that cover `range`: in each column those with the lowest
// and the highest value and those whose bars reach lowest and highest, and the first and last point of all; indices
// rise. All of them when there are no more than two a column. Points outside the range count to the nearest column.
std::vector<std::size_t> thin(const std::vector<ChartPoint>& points, AxisRange range, int columns);

}  // namespace steadyturn
