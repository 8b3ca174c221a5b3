#include "qr_symbol.h"

#include <qrencode.h>

#include <QPainterPath>
#include <memory>

namespace steadyturn {

std::optional<QrSymbol> QrSymbol::of(const std::string& text) {
  const std::unique_ptr<QRcode, decltype(&QRcode_free)> code(
      QRcode_encodeString(text.c_str(), 0, QR_ECLEVEL_M, QR_MODE_8, 1), &QRcode_free);
  if (!code) return {};
  QrSymbol symbol;
  symbol.side_ = code->width;
  const auto count = static_cast<std::size_t>(code->width) * static_cast<std::size_t>(code->width);
  // The lowest bit of a module's byte is its colour; the others say what the module is for.
  for (std::size_t i = 0; i < count; ++i) symbol.dark_.push_back((code->data[i] & 1) != 0);
  return symbol;
}

// One path, so that a renderer has no seams to smooth between neighbouring modules.
void QrSymbol::draw(QPainter& painter, QPointF corner, double module) const {
  QPainterPath path;
  path.setFillRule(Qt::WindingFill);
  const auto isDark = [this](int row, int column) {
    return dark_[static_cast<std::size_t>(row) * static_cast<std::size_t>(side_) + static_cast<std::size_t>(column)];
  };
  for (int row = 0; row < side_; ++row) {
    for (int column = 0; column < side_; ++column) {
      if (!isDark(row, column)) continue;
      const int first = column;
      while (column + 1 < side_ && isDark(row, column + 1)) ++column;
      path.addRect(QRectF(corner.x() + (quietZone + first) * module, corner.y() + (quietZone + row) * module,
                          (column - first + 1) * module, module));
    }
  }
  painter.fillPath(path, Qt::black);
}

}  // namespace steadyturn
