#include "adapter_sketch.h"

#include <QPainter>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "text.h"
#include "theme.h"

namespace steadyturn {
namespace {

constexpr Adapter typical{.wrenchLengthMm = 400, .offsetMm = 80, .angleDeg = 0};
constexpr double leastShare = 0.12, mostShare = 0.45;  // of the handle, so that a short offset can be seen

}  // namespace

AdapterSketch::AdapterSketch(QWidget* parent) : QWidget(parent), adapter_(typical) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  display(typical);
}

void AdapterSketch::display(const Adapter& adapter) {
  adapter_ = adapter;
  setAccessibleName(
      tr("Measure L, %1 mm, from the middle of the hand to the centre of the drive; E, %2 mm, from there "
         "to the centre of the fastener; the angle between them is %3°")
          .arg(fromText(writeRounded(adapter.wrenchLengthMm)), fromText(writeRounded(adapter.offsetMm)),
               fromText(writeRounded(adapter.angleDeg))));
  update();
}

void AdapterSketch::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const QColor ink = palette().color(QPalette::WindowText);
  const QColor body = blend(ink, palette().color(QPalette::Window), 0.35);
  const QColor accent = toneColour(Tone::Info, palette());
  const double handle = std::min(0.55 * width(), 320.0);
  const QPointF hand(24, 40);
  const QPointF drive(hand.x() + handle, hand.y());
  const double share = std::clamp(adapter_.offsetMm / std::max(adapter_.wrenchLengthMm, 1.0), leastShare, mostShare);
  const double angle = adapter_.angleDeg * std::numbers::pi / 180;
  // Upwards on the screen, but never out of it.
  const QPointF fastener(drive.x() + share * handle * std::cos(angle),
                         drive.y() - std::clamp(share * handle * std::sin(angle), -30.0, 30.0));
  painter.setPen(QPen(body, 9, Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(hand, drive);
  painter.setPen(QPen(accent, 7, Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(drive, fastener);
  painter.setPen(QPen(ink, 1.4));
  painter.setBrush(palette().color(QPalette::Window));
  painter.drawEllipse(hand, 6, 9);
  painter.drawRect(QRectF(drive.x() - 6, drive.y() - 6, 12, 12));
  painter.drawEllipse(fastener, 8, 8);
  painter.drawText(QRectF(hand.x() - 20, hand.y() + 10, 110, 18), Qt::AlignLeft, tr("hand's middle"));
  painter.drawText(QRectF(drive.x() - 60, drive.y() + 10, 120, 18), Qt::AlignHCenter, tr("drive"));
  painter.drawText(QPointF(fastener.x() + 14, fastener.y() + 5), tr("fastener"));
  // L above the handle, E and θ in the words beside.
  const double above = hand.y() - 18;
  painter.drawLine(QPointF(hand.x(), above), QPointF(drive.x(), above));
  for (const double x : {hand.x(), drive.x()}) painter.drawLine(QPointF(x, above - 4), QPointF(x, above + 4));
  painter.drawText(QRectF(hand.x(), above - 18, handle, 16), Qt::AlignHCenter,
                   tr("L = %1 mm").arg(fromText(writeRounded(adapter_.wrenchLengthMm))));
  painter.setPen(accent);
  painter.drawText(QRectF(0, height() - 18, width() - 8, 18), Qt::AlignRight,
                   tr("E = %1 mm from drive to fastener, angle %2° from the handle's line")
                       .arg(fromText(writeRounded(adapter_.offsetMm)), fromText(writeRounded(adapter_.angleDeg))));
}

}  // namespace steadyturn
