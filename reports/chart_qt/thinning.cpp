#include "thinning.h"

#include <algorithm>
#include <array>
#include <numeric>

namespace steadyturn {
namespace {

constexpr std::size_t none = static_cast<std::size_t>(-1);

struct ColumnExtremes {
  std::size_t lowest = none, highest = none, lowestBar = none, highestBar = none;
};

double barLow(const ChartPoint& point) { return point.value - point.uncertainty.value_or(0); }
double barHigh(const ChartPoint& point) { return point.value + point.uncertainty.value_or(0); }

void take(ColumnExtremes& column, const std::vector<ChartPoint>& points, std::size_t index) {
  if (column.lowest == none) {
    column = {index, index, index, index};
    return;
  }
  const auto& point = points[index];
  if (point.value < points[column.lowest].value) column.lowest = index;
  if (point.value > points[column.highest].value) column.highest = index;
  if (barLow(point) < barLow(points[column.lowestBar])) column.lowestBar = index;
  if (barHigh(point) > barHigh(points[column.highestBar])) column.highestBar = index;
}

}  // namespace

std::vector<std::size_t> thin(const std::vector<ChartPoint>& points, const Passage& across, AxisRange range,
                              int columns) {
  const auto width = static_cast<std::size_t>(std::max(columns, 1));
  const auto place = [&](const ChartPoint& point) { return across.place(point.date); };
  const auto inside = std::ranges::lower_bound(points, range.low, {}, place);
  const auto beyond = std::ranges::upper_bound(inside, points.end(), range.high, {}, place);
  const auto first = static_cast<std::size_t>(inside - points.begin()) - (inside == points.begin() ? 0 : 1);
  const auto end = static_cast<std::size_t>(beyond - points.begin()) + (beyond == points.end() ? 0 : 1);
  std::vector<std::size_t> kept;
  if (end - first <= 2 * width) {
    kept.resize(end - first);
    std::iota(kept.begin(), kept.end(), first);
    return kept;
  }
  std::vector<ColumnExtremes> extremes(width);
  const double scale = static_cast<double>(width) / (range.high - range.low);
  for (std::size_t i = first; i < end; ++i) {
    const double column = (place(points[i]) - range.low) * scale;
    take(extremes[static_cast<std::size_t>(std::clamp(column, 0.0, static_cast<double>(width - 1)))], points, i);
  }
  kept = {first, end - 1};
  for (const auto& column : extremes) {
    if (column.lowest == none) continue;
    kept.insert(kept.end(), {column.lowest, column.highest, column.lowestBar, column.highestBar});
  }
  std::sort(kept.begin(), kept.end());
  kept.erase(std::unique(kept.begin(), kept.end()), kept.end());
  return kept;
}

}  // namespace steadyturn
