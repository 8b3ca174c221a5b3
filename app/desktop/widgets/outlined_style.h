// Fusion with outlines that are seen on a dark ground too: there its own are darker than the ground.
#pragma once

#include <QProxyStyle>

namespace steadyturn {

class OutlinedStyle : public QProxyStyle {
  Q_OBJECT
 public:
  OutlinedStyle();
  void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
  void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                          const QWidget* widget) const override;
};

}  // namespace steadyturn
