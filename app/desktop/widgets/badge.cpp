#include "badge.h"

#include <QPainter>
#include <algorithm>

namespace steadyturn {
namespace {

constexpr int gap = 6;

int signSide(const QFontMetrics& metrics) { return std::max(12, metrics.ascent() + 1); }

}  // namespace

void paintLook(QPainter& painter, const QRect& place, const Look& look, const QColor& colour) {
  const QFontMetrics metrics = painter.fontMetrics();
  const int side = signSide(metrics);
  const QRect signPlace(place.left(), place.top() + (place.height() - side) / 2, side, side);
  paintSign(painter, signPlace, look.sign, colour);
  const QRect wordPlace = place.adjusted(side + gap, 0, 0, 0);
  painter.setPen(colour);
  painter.drawText(wordPlace, Qt::AlignVCenter | Qt::AlignLeft,
                   metrics.elidedText(look.word, Qt::ElideRight, wordPlace.width()));
}

Badge::Badge(QWidget* parent) : QLabel(parent) { setSizePolicy(QSizePolicy::Minimum, QSizePolicy::Fixed); }

void Badge::setLook(const Look& look) {
  look_ = look;
  setText(look.word);  // what a screen reader says
  updateGeometry();
  update();
}

void Badge::clearLook() { setLook({}); }

QSize Badge::sizeHint() const {
  const QFontMetrics metrics = fontMetrics();
  if (look_.word.isEmpty()) return {0, metrics.height() + 4};
  return {signSide(metrics) + gap + metrics.horizontalAdvance(look_.word) + 2, metrics.height() + 4};
}

void Badge::paintEvent(QPaintEvent*) {
  if (look_.word.isEmpty()) return;
  QPainter painter(this);
  paintLook(painter, rect(), look_, toneColour(look_.tone, palette()));
}

}  // namespace steadyturn
