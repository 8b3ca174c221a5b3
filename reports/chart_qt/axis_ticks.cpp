#include "axis_ticks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace steadyturn {
namespace {

using std::chrono::day;
using std::chrono::days;
using std::chrono::month;
using std::chrono::year;
using std::chrono::year_month_day;

struct Extent {
  double low = std::numeric_limits<double>::infinity();
  double high = -std::numeric_limits<double>::infinity();

  void take(double value) {
    low = std::min(low, value);
    high = std::max(high, value);
  }
  bool empty() const { return low > high; }
  double span() const { return high - low; }
};

Date dateAt(double place) { return Date{days{static_cast<int>(std::floor(place))}}; }

std::vector<Tick> monthTicks(AxisRange range, int stepMonths) {
  std::vector<Tick> ticks;
  const year_month_day first{dateAt(range.low)};
  const int start = static_cast<int>(first.year()) * 12 + static_cast<int>(static_cast<unsigned>(first.month())) - 1;
  for (int count = start - start % stepMonths;; count += stepMonths) {
    const Date date{year_month_day{year{count / 12}, month{static_cast<unsigned>(count % 12 + 1)}, day{1}}};
    const double at = axisPlace(date);
    if (at > range.high) return ticks;
    if (at < range.low) continue;
    const auto label = writeDate(date);
    ticks.push_back({at, stepMonths % 12 == 0 ? label.substr(0, 4) : label.substr(0, 7)});
  }
}

std::vector<Tick> dayTicks(AxisRange range, int stepDays) {
  std::vector<Tick> ticks;
  const auto first = static_cast<int>(std::ceil(range.low / stepDays));
  const auto last = static_cast<int>(std::floor(range.high / stepDays));
  for (int step = first; step <= last; ++step) {
    const double at = static_cast<double>(step) * stepDays;
    ticks.push_back({at, writeDate(dateAt(at))});
  }
  return ticks;
}

double roundStep(double span, int most) {
  const double rough = span / most;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  for (const double factor : {1.0, 2.0, 5.0}) {
    if (factor * power >= rough) return factor * power;
  }
  return 10 * power;
}

std::string signedLabel(double value) {
  auto size = fmt::format("{:g}", std::abs(value));
  if (size == "0") return size;
  return (value < 0 ? "−" : "+") + size;
}

Extent valuesBesidesBands(const ChartModel& chart) {
  Extent extent;
  for (const auto& series : chart.points) {
    if (series.onFloor) continue;
    for (const auto& point : series.points) {
      extent.take(point.value - point.uncertainty.value_or(0));
      extent.take(point.value + point.uncertainty.value_or(0));
    }
  }
  for (const auto& line : chart.lines) {
    for (const auto& point : line.points) extent.take(point.value);
  }
  for (const auto& line : chart.horizontals) extent.take(line.value);
  return extent;
}

}  // namespace

double axisPlace(Date date) { return static_cast<double>(date.time_since_epoch().count()); }

AxisRange acrossRange(const ChartModel& chart) {
  Extent extent;
  const auto takeAll = [&](const auto& dated) {
    for (const auto& one : dated) extent.take(chart.across.place(one.date));
  };
  for (const auto& series : chart.points) takeAll(series.points);
  for (const auto& line : chart.lines) takeAll(line.points);
  for (const auto& band : chart.bands) takeAll(band.edges);
  takeAll(chart.verticals);
  if (extent.empty()) return {axisPlace(Date{}), axisPlace(Date{}) + 365};
  const double room = std::max(extent.span() * 0.03, chart.across.byCalendar() ? 15.0 : 1.0);
  return {extent.low - room, extent.high + room};
}

AxisRange valueRange(const ChartModel& chart) {
  Extent extent = valuesBesidesBands(chart);
  Extent bands;
  for (const auto& band : chart.bands) {
    for (const auto& edge : band.edges) {
      bands.take(edge.low);
      bands.take(edge.high);
    }
  }
  if (extent.empty()) extent = bands;
  if (extent.empty()) return {-1, 1};
  if (!bands.empty()) {
    const double room = 0.5 * extent.span();
    extent.take(std::max(bands.low, extent.low - room));
    extent.take(std::min(bands.high, extent.high + room));
  }
  const double span = extent.span() > 0 ? extent.span() : std::max(1.0, std::abs(extent.low));
  const double above = chart.verticals.empty() ? 0.08 : 0.2;
  const bool floor = std::ranges::any_of(chart.points, &PointSeries::onFloor);
  const double low = extent.low - (floor ? 0.14 : 0.08) * span;
  return {chart.valuesFrom.value_or(low), extent.high + above * span};
}

std::vector<Tick> dateTicks(AxisRange range, int most) {
  const double span = range.high - range.low;
  for (const int step : {1, 2, 7, 14}) {
    if (span / step <= most) return dayTicks(range, step);
  }
  constexpr double daysPerMonth = daysPerYear / 12;
  for (const int step : {1, 3, 6, 12, 24, 60, 120, 240, 600, 1200}) {
    if (span / (step * daysPerMonth) <= most) return monthTicks(range, step);
  }
  return monthTicks(range, 12000);
}

std::vector<Tick> valueTicks(AxisRange range, int most) {
  std::vector<Tick> ticks;
  const double step = roundStep(range.high - range.low, most);
  const double first = std::ceil(range.low / step);
  // Counting whole steps keeps 0 a 0 and 0.3 a 0.3.
  for (double count = first; count * step <= range.high; ++count)
    ticks.push_back({count * step, signedLabel(count * step)});
  return ticks;
}

std::vector<Tick> countTicks(AxisRange range, int most) {
  std::vector<Tick> ticks;
  const double step = std::max(1.0, roundStep(range.high - range.low, most));
  for (double count = std::max(0.0, std::ceil(range.low / step)); count * step <= range.high; ++count)
    ticks.push_back({count * step, fmt::format("{:.0f}", count * step)});
  return ticks;
}

}  // namespace steadyturn
