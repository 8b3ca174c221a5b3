#include "small_chart.h"

#include <algorithm>
#include <ranges>

#include "drift_drawing.h"
#include "marks_item.h"

namespace steadyturn {
namespace {

constexpr double reach = 1.6;  // limits shown above and below nought
constexpr double smallMark = 6;

class SmallChart {
 public:
  SmallChart(QPainter& painter, const QRectF& place, const HistoryData& history, const SmallScale& scale,
             const ChartTheme& theme)
      : painter_(painter), place_(place), history_(history), scale_(scale), theme_(theme) {}

  void paint() {
    painter_.save();
    painter_.setRenderHint(QPainter::Antialiasing);
    painter_.fillRect(place_, theme_.background);
    painter_.setClipRect(place_);
    const auto drift = drawDrift(history_, std::max(history_.asOf, lastCheck()));
    for (const auto& band : drift.bands) drawBand(band);
    drawLevels();
    for (const auto& line : drift.lines) drawLine(line);
    for (const auto& point : history_.points) drawMark(point);
    painter_.setPen(QPen(theme_.quietText, 1));
    painter_.setBrush(Qt::NoBrush);
    painter_.drawRect(place_.adjusted(0.5, 0.5, -0.5, -0.5));
    painter_.restore();
  }

 private:
  Date lastCheck() const { return history_.points.empty() ? history_.asOf : history_.points.back().date; }
  double x(Date date) const {
    const auto part = static_cast<double>((date - scale_.from).count());
    return place_.left() + 4 + (place_.width() - 8) * part / static_cast<double>((scale_.to - scale_.from).count());
  }
  double y(double percent) const {
    const double share = std::clamp(percent / history_.limitPercent, -reach, reach) / reach;
    return place_.center().y() - share * (place_.height() / 2 - smallMark);
  }

  void drawBand(const Band& band) {
    QPolygonF outline;
    for (const auto& edge : band.edges) outline << QPointF(x(edge.date), y(edge.high));
    for (const auto& edge : std::views::reverse(band.edges)) outline << QPointF(x(edge.date), y(edge.low));
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(theme_.predictionFill);
    painter_.drawPolygon(outline);
  }

  void drawLevel(double percent, const QPen& pen) {
    painter_.setPen(pen);
    painter_.drawLine(QPointF(place_.left(), y(percent)), QPointF(place_.right(), y(percent)));
  }

  void drawLevels() {
    drawLevel(0, QPen(theme_.grid, 1));
    for (const double limit : {history_.limitPercent, -history_.limitPercent})
      drawLevel(limit, QPen(theme_.limit, 1.2));
  }

  void drawLine(const LineSeries& line) {
    QPolygonF path;
    for (const auto& point : line.points) path << QPointF(x(point.date), y(point.value));
    painter_.setPen(QPen(theme_.fit, 1.2, line.stroke == Stroke::Solid ? Qt::SolidLine : Qt::DotLine));
    painter_.drawPolyline(path);
  }

  void drawMark(const PointSummary& point) {
    const bool found = point.phase == Phase::AsFound;
    painter_.setPen(QPen(theme_.background, 0.6));
    painter_.setBrush(found ? theme_.asFound : theme_.asLeft);
    const QPointF at(x(point.date), y(point.meanDeviation));
    const double beyond = std::abs(point.meanDeviation) / history_.limitPercent;
    if (beyond <= reach) {
      painter_.drawPolygon(markShape(found ? Mark::Circle : Mark::Triangle, smallMark).translated(at));
      return;
    }
    const double tip = point.meanDeviation > 0 ? -smallMark : smallMark;
    painter_.drawPolygon(QPolygonF({at + QPointF(0, tip), at + QPointF(-4, 0), at + QPointF(4, 0)}));
  }

  QPainter& painter_;
  const QRectF place_;
  const HistoryData& history_;
  const SmallScale& scale_;
  const ChartTheme& theme_;
};

}  // namespace

SmallScale commonScale(const std::vector<const HistoryData*>& histories) {
  SmallScale scale{Date::max(), Date::min()};
  for (const auto* history : histories) {
    scale.to = std::max(scale.to, history->asOf);
    if (history->points.empty()) continue;
    scale.from = std::min(scale.from, history->points.front().date);
    scale.to = std::max(scale.to, history->points.back().date);
  }
  if (scale.from >= scale.to) scale.from = scale.to - std::chrono::days{365};
  return scale;
}

void paintSmallChart(QPainter& painter, const QRectF& place, const HistoryData& history, const SmallScale& scale,
                     const ChartTheme& theme) {
  SmallChart(painter, place, history, scale, theme).paint();
}

}  // namespace steadyturn
