#include "marks_item.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

namespace steadyturn {
namespace {

constexpr double markSize = 9;
constexpr double capHalfWidth = 3;
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
    case Mark::Star: {
      QPolygonF star;
      constexpr int points = 5;
      for (int i = 0; i < 2 * points; ++i) {
        const double angle = M_PI * i / points;
        const double reach = i % 2 == 0 ? r * 1.35 : r * 0.55;
        star << QPointF(reach * std::sin(angle), -reach * std::cos(angle));
      }
      return star;
    }
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
                     QAbstractSeries* placed, const QColor& colour, const QColor& ground, AxisRange across)
    : QGraphicsItem(chart),
      chart_(chart),
      model_(std::move(model)),
      series_(series),
      placed_(placed),
      colour_(colour),
      ground_(ground),
      across_(across) {
  setAcceptedMouseButtons(Qt::NoButton);
}

void MarksItem::layOut() {
  prepareGeometryChange();
  spots_.clear();
  const int columns = std::max(1, static_cast<int>(chart_->plotArea().width() / columnWidth));
  const QRectF plot = chart_->plotArea();
  // A pixel's rounding must not drop a mark on the edge.
  const QRectF seen = plot.adjusted(-1, -1, 1, 1);
  for (const auto index : thin(series_->points, model_->across, across_, columns)) {
    const auto& point = series_->points[index];
    const double x = model_->across.place(point.date);
    Spot spot{.at = chart_->mapToPosition({x, point.value}, placed_), .barTop = 0, .barBottom = 0, .point = &point};
    if (series_->onFloor) spot.at.setY(plot.bottom() - floorHeight);
    if (!seen.contains(spot.at)) continue;
    if (point.uncertainty) {
      const auto reach = [&](double value) {
        return std::clamp(chart_->mapToPosition({x, value}, placed_).y(), plot.top(), plot.bottom());
      };
      spot.barTop = reach(point.value + *point.uncertainty);
      spot.barBottom = reach(point.value - *point.uncertainty);
    }
    spots_.push_back(spot);
  }
}

QRectF MarksItem::boundingRect() const {
  return chart_->plotArea().adjusted(-markSize, -markSize, markSize, markSize);
}

void MarksItem::drawBars(QPainter& painter) const {
  QVector<QLineF> bars;
  bars.reserve(3 * static_cast<qsizetype>(spots_.size()));
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

}  // namespace steadyturn
