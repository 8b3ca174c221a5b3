// Signs told apart by shape alone, drawn (no font has to carry them).
#pragma once

#include <QColor>
#include <QRectF>

class QPainter;

namespace steadyturn {

enum class Sign { Tick, HalfTick, HalfCross, Cross, Warning, Clock, Slope, Pause, Ring, Dash, Info };

// Fills a square of the rectangle's smaller side, centred.
void paintSign(QPainter& painter, const QRectF& place, Sign sign, const QColor& colour);

}  // namespace steadyturn
