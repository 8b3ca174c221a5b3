#include "torque_display.h"

#include <QPainter>

namespace steadyturn {
namespace {

constexpr int gap = 36;

}  // namespace

TorqueDisplay::TorqueDisplay(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Minimum, QSizePolicy::Fixed);
}

QFont TorqueDisplay::fontOf(int pixels, bool bold) const {
  QFont large = font();
  large.setPixelSize(pixels);
  large.setBold(bold);
  return large;
}

void TorqueDisplay::display(const QString& first, const QString& second) {
  first_ = first;
  second_ = second;
  setAccessibleName(second.isEmpty() ? first : tr("%1, that is %2").arg(first, second));
  updateGeometry();
  update();
}

QSize TorqueDisplay::sizeHint() const {
  const int first = QFontMetrics(fontOf(firstPixels, true)).horizontalAdvance(first_);
  const int second = QFontMetrics(fontOf(secondPixels, false)).horizontalAdvance(second_);
  return {first + gap + second + 4, QFontMetrics(fontOf(firstPixels, true)).ascent() + 14};
}

void TorqueDisplay::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const QFont first = fontOf(firstPixels, true);
  const int baseline = QFontMetrics(first).ascent() - 2;
  painter.setPen(palette().color(QPalette::WindowText));
  painter.setFont(first);
  painter.drawText(0, baseline, first_);
  const int after = QFontMetrics(first).horizontalAdvance(first_) + gap;
  painter.setFont(fontOf(secondPixels, false));
  painter.setPen(palette().color(QPalette::PlaceholderText));
  painter.drawText(after, baseline, second_);
}

}  // namespace steadyturn
