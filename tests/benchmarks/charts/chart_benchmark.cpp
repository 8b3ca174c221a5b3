// How long a chart of 100,000 points takes beside one of 1,000, both made, laid out and painted anew, by turns in one
// run.
#include <QApplication>
#include <QElapsedTimer>
#include <QImage>
#include <algorithm>
#include <cmath>
#include <cstdio>

#include "chart_picture.h"

namespace {

using namespace steadyturn;

constexpr QSize size(1100, 600);
constexpr int rounds = 31;

ChartModel crowd(int count) {
  ChartModel chart;
  chart.title = "crowd";
  chart.horizontals = {{"limit +4 %", Role::Limit, 4}, {"limit −4 %", Role::Limit, -4}};
  PointSeries points{.name = "as found", .role = Role::AsFound, .mark = Mark::Circle, .points = {}};
  for (int i = 0; i < count; ++i) {
    const int day = 18'000 + static_cast<int>(3000.0 * i / count);
    points.points.push_back({.date = Date{std::chrono::days{day}},
                             .value = 3 * std::sin(0.37 * i),
                             .uncertainty = 0.4,
                             .note = "a note as long as a real one, as found: +1.1 %"});
  }
  chart.points.push_back(std::move(points));
  return chart;
}

double milliseconds(const ChartModel& chart, QImage& image) {
  QElapsedTimer timer;
  timer.start();
  QPainter painter(&image);
  paintChart(chart, lightTheme(), size, painter, QRectF(QPointF(0, 0), QSizeF(size)));
  painter.end();
  return static_cast<double>(timer.nsecsElapsed()) / 1e6;
}

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

}  // namespace

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  const QApplication application(argc, argv);
  QImage image(size, QImage::Format_RGB32);
  const auto small = crowd(1'000), large = crowd(100'000);
  std::vector<double> smallTimes, largeTimes;
  for (int round = 0; round < rounds; ++round) {
    smallTimes.push_back(milliseconds(small, image));
    largeTimes.push_back(milliseconds(large, image));
  }
  const double smallMedian = median(smallTimes), largeMedian = median(largeTimes);
  std::printf("1,000 points %.1f ms, 100,000 points %.1f ms (medians of %d): ratio %.2f (at most 2)\n", smallMedian,
              largeMedian, rounds, largeMedian / smallMedian);
}
