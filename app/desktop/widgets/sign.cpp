#include "sign.h"

#include <QPainter>
#include <QPainterPath>
#include <QPolygonF>
#include <algorithm>

namespace steadyturn {
namespace {

// All signs are drawn in a square of 16 × 16.
void tick(QPainter& painter) { painter.drawPolyline(QPolygonF{{4, 8.5}, {7, 11.5}, {12, 5}}); }
void cross(QPainter& painter) {
  painter.drawLine(QPointF(5, 5), QPointF(11, 11));
  painter.drawLine(QPointF(11, 5), QPointF(5, 11));
}
void square(QPainter& painter) { painter.drawRect(QRectF(1.5, 1.5, 13, 13)); }
void circle(QPainter& painter) { painter.drawEllipse(QRectF(1.2, 1.2, 13.6, 13.6)); }
void triangle(QPainter& painter) { painter.drawPolygon(QPolygonF{{8, 1.5}, {15, 14}, {1, 14}}); }
void dashed(QPainter& painter) {
  QPen pen = painter.pen();
  pen.setDashPattern({1.6, 1.6});
  painter.setPen(pen);
}
void stroke(QPainter& painter, double x1, double y1, double x2, double y2) {
  painter.drawLine(QPointF(x1, y1), QPointF(x2, y2));
}

void drawInUnits(QPainter& painter, Sign sign) {
  const QPen solid = painter.pen();
  switch (sign) {
    case Sign::Tick:
      circle(painter);
      return tick(painter);
    case Sign::HalfTick:
      tick(painter);
      dashed(painter);
      return circle(painter);
    case Sign::HalfCross:
      cross(painter);
      dashed(painter);
      return square(painter);
    case Sign::Cross:
      square(painter);
      return cross(painter);
    case Sign::Warning:
      triangle(painter);
      stroke(painter, 8, 6, 8, 9.5);
      return stroke(painter, 8, 11.8, 8, 12);
    case Sign::Clock:
      circle(painter);
      stroke(painter, 8, 4, 8, 8);
      return stroke(painter, 8, 8, 11, 9.5);
    case Sign::Slope:
      stroke(painter, 1.5, 2.5, 14.5, 2.5);
      stroke(painter, 2, 13, 12, 5.5);
      return void(painter.drawPolyline(QPolygonF{{8, 5}, {12.5, 5.2}, {11.4, 9.5}}));
    case Sign::Pause:
      square(painter);
      stroke(painter, 6, 5, 6, 11);
      return stroke(painter, 10, 5, 10, 11);
    case Sign::Ring:
      return circle(painter);
    case Sign::Dash:
      square(painter);
      return stroke(painter, 4.5, 8, 11.5, 8);
    case Sign::Info:
      circle(painter);
      stroke(painter, 8, 7.5, 8, 11.5);
      return stroke(painter, 8, 4.6, 8, 4.8);
  }
  painter.setPen(solid);
}

}  // namespace

void paintSign(QPainter& painter, const QRectF& place, Sign sign, const QColor& colour) {
  const double side = std::min(place.width(), place.height());
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.translate(place.center().x() - side / 2, place.center().y() - side / 2);
  painter.scale(side / 16, side / 16);
  painter.setPen(QPen(colour, 1.7, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.setBrush(Qt::NoBrush);
  drawInUnits(painter, sign);
  painter.restore();
}

}  // namespace steadyturn
