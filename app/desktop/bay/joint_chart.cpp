#include "joint_chart.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "text.h"
#include "theme.h"

namespace steadyturn {
namespace {

constexpr double headroom = 1.05;
constexpr int ticks = 4;

// The end of an axis from 0 whose ticks are round numbers.
double roundEnd(double most) {
  const double least = headroom * most / ticks;
  const double ten = std::pow(10, std::floor(std::log10(least)));
  for (const double step : {1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0}) {
    if (step * ten >= least) return ticks * step * ten;
  }
  return ticks * 10 * ten;
}

}  // namespace

JointChart::JointChart(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void JointChart::display(std::vector<FrictionPoint> points, std::optional<double> target) {
  points_ = std::move(points);
  target_ = target;
  if (points_.empty()) {
    setAccessibleName({});
  } else {
    setAccessibleName(tr("Torque from %1 N·m at friction 0.08 to %2 N·m at 0.20; preload from %3 kN to %4 kN")
                          .arg(fromText(writeRounded(points_.front().torqueNm, 3)),
                               fromText(writeRounded(points_.back().torqueNm, 3)),
                               fromText(writeRounded(points_.front().preloadN / 1000, 3)),
                               fromText(writeRounded(points_.back().preloadN / 1000, 3))));
  }
  update();
}

QRectF JointChart::plot() const { return QRectF(rect()).adjusted(64, 28, -64, -40); }

void JointChart::paintFrame(QPainter& painter, double mostTorque, double mostPreload) const {
  const QColor ink = palette().color(QPalette::WindowText);
  const QRectF area = plot();
  painter.setPen(QPen(blend(ink, palette().color(QPalette::Window), 0.25), 1));
  for (int i = 0; i <= ticks; ++i) {
    const double y = area.bottom() - area.height() * i / ticks;
    painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y));
  }
  painter.setPen(ink);
  for (int i = 0; i <= ticks; ++i) {
    const double y = area.bottom() - area.height() * i / ticks;
    painter.drawText(QRectF(0, y - 9, area.left() - 8, 18), Qt::AlignRight | Qt::AlignVCenter,
                     fromText(writeRounded(mostTorque * i / ticks, 3)));
    painter.drawText(QRectF(area.right() + 8, y - 9, 56, 18), Qt::AlignLeft | Qt::AlignVCenter,
                     fromText(writeRounded(mostPreload * i / ticks / 1000, 3)));
  }
  for (const int hundredths : {8, 12, 16, 20}) {
    const double x = area.left() + area.width() * (hundredths - 8) / 12.0;
    painter.drawText(QRectF(x - 30, area.bottom() + 4, 60, 18), Qt::AlignCenter,
                     fromText(writeNumber(hundredths / 100.0)));
  }
  painter.drawText(QRectF(area.left(), area.bottom() + 20, area.width(), 18), Qt::AlignCenter,
                   tr("friction of thread and head"));
  painter.drawText(QRectF(0, 2, width() / 2.0, 18), Qt::AlignLeft, tr("torque, N·m (solid)"));
  painter.drawText(QRectF(width() / 2.0, 2, width() / 2.0, 18), Qt::AlignRight, tr("preload, kN (dashed)"));
}

void JointChart::paintCurves(QPainter& painter, double mostTorque, double mostPreload) const {
  const QRectF area = plot();
  const auto at = [&](const FrictionPoint& point, double share) {
    return QPointF(area.left() + area.width() * (point.friction - 0.08) / 0.12,
                   area.bottom() - area.height() * share);
  };
  QPainterPath torque(at(points_.front(), points_.front().torqueNm / mostTorque));
  QPainterPath preload(at(points_.front(), points_.front().preloadN / mostPreload));
  for (const FrictionPoint& point : points_) {
    torque.lineTo(at(point, point.torqueNm / mostTorque));
    preload.lineTo(at(point, point.preloadN / mostPreload));
  }
  painter.setPen(QPen(toneColour(Tone::Info, palette()), 3));
  painter.drawPath(torque);
  painter.setPen(QPen(palette().color(QPalette::WindowText), 2, Qt::DashLine));
  painter.drawPath(preload);
  if (!target_) return;
  const double y = area.bottom() - area.height() * *target_ / mostTorque;
  painter.setPen(QPen(toneColour(Tone::Bad, palette()), 2));
  painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y));
  painter.drawText(QRectF(area.left(), y - 20, area.width() - 6, 18), Qt::AlignRight,
                   tr("specified: %1 N·m").arg(fromText(writeRounded(*target_))));
}

void JointChart::paintEvent(QPaintEvent*) {
  if (points_.empty()) return;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const double mostTorque = roundEnd(std::max(points_.back().torqueNm, target_.value_or(0)));
  const double mostPreload = roundEnd(points_.front().preloadN);
  paintFrame(painter, mostTorque, mostPreload);
  paintCurves(painter, mostTorque, mostPreload);
}

}  // namespace steadyturn
