// One label, fitted to its size: words to the left, QR code to the right.
#pragma once

#include <QPainter>
#include <QRectF>

#include "label_text.h"
#include "labels.h"
#include "qr_symbol.h"

namespace steadyturn {

inline constexpr int labelDotsPerInch = 720;  // tenths of a typographic point
inline constexpr double labelDotsPerPoint = labelDotsPerInch / 72.0;
inline constexpr double labelDotsPerMm = labelDotsPerInch / 25.4;

struct FittedLabel {
  QrSymbol symbol;
  double module = 0;  // whole dots
  LabelText text;

  void draw(QPainter& painter, QRectF place) const;
};

// `size` in dots. Refused (field "tool") when mark, dates and state are too long to be read on a label of this size,
// or the mark's code is.
Result<FittedLabel> fitLabel(const ToolLabel& label, Date printed, QSizeF size);

}  // namespace steadyturn
