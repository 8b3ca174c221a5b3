#include "deviation_delegate.h"

#include <QPainter>
#include <algorithm>

#include "cabinet_model.h"
#include "text.h"

namespace steadyturn {
namespace {

// The scale reaches a quarter beyond the limits, so that what lies outside is seen outside.
constexpr double scaleReach = 1.25;

void paintScale(QPainter& painter, const QRectF& place, const DeviationFigures& figures, const QColor& ink,
                const QColor& faint, const QColor& band) {
  const auto x = [&](double percent) {
    const double share = std::clamp(percent / (figures.limit * scaleReach), -1.0, 1.0);
    return place.center().x() + share * place.width() / 2;
  };
  const double middle = place.center().y();
  painter.setPen(QPen(faint, 1));
  painter.drawLine(QPointF(place.left(), middle), QPointF(place.right(), middle));
  painter.drawLine(QPointF(x(0), middle - 3), QPointF(x(0), middle + 3));
  painter.setPen(QPen(ink, 1.4));
  for (const double limit : {-figures.limit, figures.limit}) {
    painter.drawLine(QPointF(x(limit), middle - 7), QPointF(x(limit), middle + 7));
  }
  if (figures.interval) {
    painter.fillRect(
        QRectF(QPointF(x(figures.interval->low), middle - 3), QPointF(x(figures.interval->high), middle + 3)), band);
  }
  painter.setBrush(ink);
  painter.drawEllipse(QPointF(x(figures.predicted), middle), 3, 3);
}

}  // namespace

void DeviationDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const QVariant carried = index.data(CabinetModel::figuresRole);
  if (!carried.canConvert<DeviationFigures>()) return LookDelegate::paint(painter, option, index);
  paintGround(painter, option, index);
  const auto figures = carried.value<DeviationFigures>();
  const bool selected = option.state & QStyle::State_Selected;
  const QColor ink = option.palette.color(selected ? QPalette::HighlightedText : QPalette::Text);
  const QColor ground = option.palette.color(selected ? QPalette::Highlight : QPalette::Base);
  const bool beyond = figures.interval ? std::max(-figures.interval->low, figures.interval->high) > figures.limit
                                       : std::abs(figures.predicted) > figures.limit;
  const QColor tone = selected ? ink : toneColour(beyond ? Tone::Bad : Tone::Info, option.palette);
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setFont(option.font);
  painter->setPen(ink);
  const int numberWidth = option.fontMetrics.horizontalAdvance(QStringLiteral("+00.00 %")) + 8;
  const QRect number(option.rect.left() + 4, option.rect.top(), numberWidth - 8, option.rect.height());
  painter->drawText(number, Qt::AlignRight | Qt::AlignVCenter, percentText(figures.predicted));
  paintScale(*painter, QRectF(option.rect.adjusted(numberWidth + 6, 2, -8, -2)), figures, ink,
             blend(ink, ground, 0.35), blend(tone, ground, 0.65));
  painter->restore();
}

}  // namespace steadyturn
