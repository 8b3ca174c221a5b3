#include "marks_item.h"

#include <QGraphicsSceneHoverEvent>
#include <QPainter>
#include <cmath>

namespace steadyturn {
namespace {

constexpr double markSize = 9;
constexpr double capHalfWidth = 3;
constexpr double hoverReach = 12;
// Marks of nine pixels that begin within the same two can't be told apart.
constexpr double columnWidth = 2;

}  // namespace

QPolygonF markShape(Mark mark, double size) {
  const double r = size / 2;
  switch (mark) {
    case Mark::Triangle:
      return QPolygonF({{0, -r * 1.15}, {r * 1.1, r * 0.85}, {-r * 1.1, r * 0.85}});
    case Mark::Square:
      return QPolygonF({{-r, -r}, {r, -r}, {r, r}, {-r, r}});
    case Mark::Diamond:
      return QPolygonF({{0, -r * 1.2}, {r * 1.2, 0}, {0, r * 1.2}, {-r * 1.2, 0}});
    case Mark::Circle:
      break;
  }
  QPolygonF circle;
  constexpr int corners = 20;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * M_PI * i / corners;
    circle << QPointF(r * std::cos(angle), r * std::sin(angle));
  }
  return circle;
}

MarksItem::MarksItem(QChart* chart, std::shared_ptr<const ChartModel> model, const PointSeries* series,
                     QAbstractSeries* placed, const QColor& colour, const QColor& ground, AxisRange dates)
    : QGraphicsItem(chart),
      chart_(chart),
      model_(std::move(model)),
      series_(series),
      placed_(placed),
      colour_(colour),
      ground_(ground),
      dates_(dates) {
  setAcceptHoverEvents(true);
}

void MarksItem::layOut() {
  prepareGeometryChange();
  spots_.clear();
  const int columns = std::max(1, static_cast<int>(chart_->plotArea().width() / columnWidth));
  for (const auto index : thin(series_->points, dates_, columns)) {
    const auto& point = series_->points[index];
    const double x = axisPlace(point.date);
    Spot spot{.at = chart_->mapToPosition({x, point.value}, placed_), .barTop = 0, .barBottom = 0, .point = &point};
    if (point.uncertainty) {
      spot.barTop = chart_->mapToPosition({x, point.value + *point.uncertainty}, placed_).y();
      spot.barBottom = chart_->mapToPosition({x, point.value - *point.uncertainty}, placed_).y();
    }
    spots_.push_back(spot);
  }
}

QRectF MarksItem::boundingRect() const {
  return chart_->plotArea().adjusted(-markSize, -markSize, markSize, markSize);
}

void MarksItem::drawBars(QPainter& painter) const {
  QVector<QLineF> bars;
  bars.reserve(static_cast<qsizetype>(3 * spots_.size()));
  const double radius = markSize / 2;
  for (const auto& spot : spots_) {
    if (!spot.point->uncertainty) continue;
    const double x = spot.at.x();
    // A bar shorter than its mark is left out: its caps would only blur the shape.
    if (spot.at.y() - spot.barTop > radius) {
      bars << QLineF(x, spot.barTop, x, spot.at.y() - radius)
           << QLineF(x - capHalfWidth, spot.barTop, x + capHalfWidth, spot.barTop);
    }
    if (spot.barBottom - spot.at.y() > radius) {
      bars << QLineF(x, spot.at.y() + radius, x, spot.barBottom)
           << QLineF(x - capHalfWidth, spot.barBottom, x + capHalfWidth, spot.barBottom);
    }
  }
  painter.setPen(QPen(colour_, 1.2));
  painter.drawLines(bars);
}

void MarksItem::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) {
  painter->setRenderHint(QPainter::Antialiasing);
  drawBars(*painter);
  // A thin rim in the ground's colour keeps crowded marks apart.
  painter->setPen(QPen(ground_, 0.8));
  painter->setBrush(colour_);
  const QPolygonF shape = markShape(series_->mark, markSize);
  for (const auto& spot : spots_) painter->drawPolygon(shape.translated(spot.at));
}

void MarksItem::hoverMoveEvent(QGraphicsSceneHoverEvent* event) {
  const Spot* nearest = nullptr;
  double best = hoverReach;
  for (const auto& spot : spots_) {
    const double distance = QLineF(spot.at, event->pos()).length();
    if (distance >= best) continue;
    best = distance;
    nearest = &spot;
  }
  setToolTip(nearest ? QString::fromStdString(nearest->point->note) : QString());
}

}  // namespace steadyturn
