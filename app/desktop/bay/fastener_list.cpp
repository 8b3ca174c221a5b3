#include "fastener_list.h"

#include <QApplication>
#include <QPainter>

#include "bay_words.h"
#include "sign.h"
#include "text.h"
#include "theme.h"

namespace steadyturn {
namespace {

QString secondLine(const Fastener& fastener) {
  QString line = fromText(fastener.id);
  if (!fastener.released()) line += FastenerList::tr("  ·  NOT RELEASED");
  if (!fastener.assembly.empty()) line += QStringLiteral("  ·  ") + fromText(fastener.assembly);
  if (!fastener.thread.empty()) line += QStringLiteral("  ·  ") + fromText(fastener.thread);
  return line;
}

}  // namespace

void FastenerList::show(std::vector<Fastener> fasteners) {
  beginResetModel();
  fasteners_ = std::move(fasteners);
  endResetModel();
}

const Fastener* FastenerList::at(int row) const {
  return row < 0 || row >= rowCount() ? nullptr : &fasteners_[static_cast<std::size_t>(row)];
}

int FastenerList::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(fasteners_.size());
}

QVariant FastenerList::data(const QModelIndex& index, int role) const {
  const Fastener* fastener = at(index.row());
  if (!fastener) return {};
  switch (role) {
    case Qt::DisplayRole:
      return fromText(fastener->component);
    case Qt::AccessibleTextRole:
    case Qt::ToolTipRole:
      return componentWords(*fastener) + QStringLiteral(", ") + torqueText(fastener->targetTorque()) +
             (fastener->plastic() ? tr(", plastic") : QString()) +
             (fastener->released() ? QString() : tr(", not released"));
    case secondLineRole:
      return secondLine(*fastener);
    case plasticRole:
      return fastener->plastic();
    default:
      return {};
  }
}

void FastenerDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
  QStyleOptionViewItem ground = option;
  ground.index = index;
  QApplication::style()->drawControl(QStyle::CE_ItemViewItem, &ground, painter, option.widget);
  const bool selected = option.state & QStyle::State_Selected;
  const QColor ink = option.palette.color(selected ? QPalette::HighlightedText : QPalette::Text);
  const QRect place = option.rect.adjusted(8, 4, -8, -4);
  const int line = place.height() / 2;
  int right = 0;
  painter->save();
  if (index.data(FastenerList::plasticRole).toBool()) {
    const QString word = tr("plastic");
    const int width = option.fontMetrics.horizontalAdvance(word);
    const QColor tone = selected ? ink : toneColour(Tone::Caution, option.palette);
    painter->setPen(tone);
    painter->drawText(QRect(place.right() - width, place.top(), width + 1, line), Qt::AlignVCenter, word);
    paintSign(*painter, QRectF(place.right() - width - 20, place.top() + (line - 14) / 2.0, 14, 14), Sign::Warning,
              tone);
    right = width + 26;
  }
  QFont bold = option.font;
  bold.setBold(true);
  painter->setFont(bold);
  painter->setPen(ink);
  const QRect first(place.left(), place.top(), place.width() - right, line);
  painter->drawText(first, Qt::AlignVCenter,
                    QFontMetrics(bold).elidedText(index.data().toString(), Qt::ElideRight, first.width()));
  painter->setFont(option.font);
  if (!selected) painter->setPen(option.palette.color(QPalette::PlaceholderText));
  const QRect second(place.left(), place.top() + line, place.width(), line);
  painter->drawText(second, Qt::AlignVCenter,
                    option.fontMetrics.elidedText(index.data(FastenerList::secondLineRole).toString(), Qt::ElideRight,
                                                  second.width()));
  painter->restore();
}

QSize FastenerDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const {
  return {100, 2 * option.fontMetrics.height() + 12};
}

}  // namespace steadyturn
