#include "probability_delegate.h"

#include <QPainter>

#include "options_table.h"

namespace steadyturn {

void ProbabilityDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                                const QModelIndex& index) const {
  const QVariant share = index.data(OptionsTable::shareRole);
  if (!share.isValid()) return LookDelegate::paint(painter, option, index);
  paintGround(painter, option, index);
  const bool selected = option.state & QStyle::State_Selected;
  const QColor ink = option.palette.color(selected ? QPalette::HighlightedText : QPalette::Text);
  const QColor ground = option.palette.color(selected ? QPalette::Highlight : QPalette::Base);
  const int numberWidth = option.fontMetrics.horizontalAdvance(QStringLiteral("> 99.9 %"));
  painter->save();
  painter->setFont(option.font);
  painter->setPen(ink);
  painter->drawText(QRect(option.rect.left() + 6, option.rect.top(), numberWidth, option.rect.height()),
                    Qt::AlignRight | Qt::AlignVCenter, index.data().toString());
  QRectF bar(option.rect.left() + numberWidth + 14, option.rect.center().y() - 4,
             option.rect.width() - numberWidth - 24, 8);
  painter->fillRect(bar, blend(ink, ground, 0.15));
  bar.setWidth(bar.width() * share.toDouble());
  painter->fillRect(bar, selected ? ink : toneColour(Tone::Info, option.palette));
  painter->restore();
}

}  // namespace steadyturn
