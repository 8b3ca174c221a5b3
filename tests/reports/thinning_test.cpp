#include "thinning.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <map>

namespace steadyturn {
namespace {

ChartPoint pointAt(int day, double value, double uncertainty) {
  return {.date = Date{std::chrono::days{day}}, .value = value, .uncertainty = uncertainty, .note = {}};
}

// The same question asked the long way round: which column does a point fall in?
int columnOf(const ChartPoint& point, AxisRange range, int columns) {
  const double share = (axisPlace(point.date) - range.low) / (range.high - range.low);
  return std::clamp(static_cast<int>(share * columns), 0, columns - 1);
}

RC_GTEST_PROP(Thinning, KeepsEveryExtremeOfEveryColumn,
              (const std::vector<std::tuple<std::uint16_t, std::int16_t, std::uint8_t>>& raw)) {
  std::vector<ChartPoint> points;
  for (const auto& [day, value, uncertainty] : raw) points.push_back(pointAt(day % 997, value, uncertainty));
  const AxisRange range{0, 1000};
  const int columns = *rc::gen::inRange(1, 12);
  const auto kept = thin(points, range, columns);

  RC_ASSERT(std::ranges::is_sorted(kept));
  RC_ASSERT(std::ranges::adjacent_find(kept) == kept.end());
  struct Extent {
    double low = 1e9, high = -1e9, barLow = 1e9, barHigh = -1e9;
    bool operator==(const Extent&) const = default;
  };
  std::map<int, Extent> all, shown;
  const auto take = [&](std::map<int, Extent>& extents, const ChartPoint& point) {
    auto& extent = extents[columnOf(point, range, columns)];
    extent.low = std::min(extent.low, point.value);
    extent.high = std::max(extent.high, point.value);
    extent.barLow = std::min(extent.barLow, point.value - *point.uncertainty);
    extent.barHigh = std::max(extent.barHigh, point.value + *point.uncertainty);
  };
  for (const auto& point : points) take(all, point);
  for (const auto index : kept) take(shown, points[index]);
  RC_ASSERT(all == shown);
}

TEST(Thinning, KeepsAboutTwoPointsAColumn) {
  std::vector<ChartPoint> points;
  for (int i = 0; i < 100'000; ++i) points.push_back(pointAt(i / 20, (i * 7919) % 1000, 0.5));
  const auto kept = thin(points, {0, 5000}, 500);
  EXPECT_LE(kept.size(), 2 * 500u + 2);
  EXPECT_GE(kept.size(), 2 * 500u - 2);
}

TEST(Thinning, LeavesFewPointsAlone) {
  const std::vector<ChartPoint> points{pointAt(1, 1, 0), pointAt(1, 2, 0), pointAt(1, 1.5, 0)};
  EXPECT_EQ(thin(points, {0, 10}, 2), (std::vector<std::size_t>{0, 1, 2}));
  EXPECT_TRUE(thin({}, {0, 10}, 2).empty());
}

}  // namespace
}  // namespace steadyturn
