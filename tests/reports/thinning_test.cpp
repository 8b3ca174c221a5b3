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
  std::ranges::sort(points, {}, &ChartPoint::date);
  const AxisRange range{0, 1000};
  const int columns = *rc::gen::inRange(1, 12);
  const auto kept = thin(points, Passage(), range, columns);

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
  const auto kept = thin(points, Passage(), {0, 5000}, 500);
  EXPECT_LE(kept.size(), 2 * 500u + 2);
  EXPECT_GE(kept.size(), 2 * 500u - 2);
}

TEST(Thinning, KeepsOneNeighbourOnEachSideOfAWindow) {
  std::vector<ChartPoint> points;
  for (int i = 0; i < 10; ++i) points.push_back(pointAt(10 * i, i, 0));
  EXPECT_EQ(thin(points, Passage(), {25, 45}, 100), (std::vector<std::size_t>{2, 3, 4, 5}));
  EXPECT_EQ(thin(points, Passage(), {-5, 5}, 100), (std::vector<std::size_t>{0, 1}));
}

TEST(Passage, GoesByTheCountBetweenAndBeyondItsKnots) {
  const auto day = [](int count) { return Date{std::chrono::days{count}}; };
  const Passage uses({{day(0), 0}, {day(10), 100}, {day(20), 100}, {day(40), 200}}, "uses");
  EXPECT_DOUBLE_EQ(uses.place(day(5)), 50);
  EXPECT_DOUBLE_EQ(uses.place(day(15)), 100);
  EXPECT_DOUBLE_EQ(uses.place(day(30)), 150);
  // 200 in 40 days: 5 a day before and after.
  EXPECT_DOUBLE_EQ(uses.place(day(50)), 250);
  EXPECT_DOUBLE_EQ(uses.place(day(-2)), -10);
  EXPECT_DOUBLE_EQ(Passage().place(day(17)), 17);
}

TEST(Thinning, LeavesFewPointsAlone) {
  const std::vector<ChartPoint> points{pointAt(1, 1, 0), pointAt(1, 2, 0), pointAt(1, 1.5, 0)};
  EXPECT_EQ(thin(points, Passage(), {0, 10}, 2), (std::vector<std::size_t>{0, 1, 2}));
  EXPECT_TRUE(thin({}, Passage(), {0, 10}, 2).empty());
}

}  // namespace
}  // namespace steadyturn
