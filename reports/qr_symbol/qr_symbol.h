// A QR symbol (ISO/IEC 18004) as a matrix, and its drawing as rectangles.
#pragma once

#include <QPainter>
#include <QRectF>
#include <optional>
#include <string>
#include <vector>

namespace steadyturn {

class QrSymbol {
 public:
  // Error correction level M. Nothing when the text is more than a symbol holds (3391 of our characters).
  static std::optional<QrSymbol> of(const std::string& text);

  // Modules on a side, with the quiet zone of four on each.
  int sideWithQuietZone() const { return side_ + 2 * quietZone; }
  // Fills the dark modules; `corner` is the quiet zone's. Whole `module` units keep neighbours flush on every device.
  void draw(QPainter& painter, QPointF corner, double module) const;

 private:
  static constexpr int quietZone = 4;  // ISO/IEC 18004, 6.3.8

  int side_ = 0;
  std::vector<bool> dark_;  // row by row
};

}  // namespace steadyturn
