#include "outlined_style.h"

#include <QPainter>
#include <QStyleOption>

#include "theme.h"

namespace steadyturn {
namespace {

void outline(const QStyleOption* option, QPainter* painter, double radius = 2) {
  if (!isDark(option->palette)) return;
  const bool focused = option->state & QStyle::State_HasFocus;
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setBrush(Qt::NoBrush);
  painter->setPen(QPen(option->palette.color(focused ? QPalette::Link : QPalette::Mid), 1));
  painter->drawRoundedRect(QRectF(option->rect).adjusted(0.5, 0.5, -0.5, -0.5), radius, radius);
  painter->restore();
}

}  // namespace

OutlinedStyle::OutlinedStyle() : QProxyStyle(QStringLiteral("Fusion")) {}

void OutlinedStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                                  const QWidget* widget) const {
  QProxyStyle::drawPrimitive(element, option, painter, widget);
  if (element == PE_FrameLineEdit || element == PE_PanelButtonCommand || element == PE_IndicatorCheckBox ||
      element == PE_Frame) {
    outline(option, painter);
  }
  if (element == PE_IndicatorRadioButton) outline(option, painter, option->rect.height() / 2.0);
}

void OutlinedStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                                       const QWidget* widget) const {
  QProxyStyle::drawComplexControl(control, option, painter, widget);
  if (control == CC_ComboBox || control == CC_SpinBox) outline(option, painter);
}

}  // namespace steadyturn
