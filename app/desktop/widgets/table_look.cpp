#include "table_look.h"

#include <QApplication>
#include <QHeaderView>
#include <QPainter>

#include "badge.h"

namespace steadyturn {
namespace {

const QString numberGap = QStringLiteral("\u00a0\u00a0\u00a0");

}  // namespace

void dressTable(QTableView& table, const QString& accessibleName) {
  table.setAccessibleName(accessibleName);
  table.setSelectionBehavior(QAbstractItemView::SelectRows);
  table.setSelectionMode(QAbstractItemView::SingleSelection);
  table.setEditTriggers(QAbstractItemView::NoEditTriggers);
  table.setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  table.setAlternatingRowColors(true);
  table.setShowGrid(false);
  table.setWordWrap(false);
  table.setTabKeyNavigation(false);  // Tab leaves the table, arrows walk in it
  table.verticalHeader()->hide();
  table.verticalHeader()->setDefaultSectionSize(table.fontMetrics().height() + 10);
  table.horizontalHeader()->setHighlightSections(false);
  table.horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  table.setItemDelegate(new LookDelegate(&table));
}

void setColumns(QTableView& table, const std::vector<int>& characters) {
  QHeaderView* header = table.horizontalHeader();
  const int character = table.fontMetrics().horizontalAdvance(QLatin1Char('0'));
  for (std::size_t i = 0; i < characters.size(); ++i) {
    const int column = static_cast<int>(i);
    header->setSectionResizeMode(column, characters[i] == 0 ? QHeaderView::Stretch : QHeaderView::Fixed);
    if (characters[i] > 0) header->resizeSection(column, characters[i] * character + 14);
  }
}

QVariant columnHead(std::span<const ColumnHead> heads, int section, Qt::Orientation orientation, int role) {
  if (orientation != Qt::Horizontal || section < 0 || section >= static_cast<int>(heads.size())) return {};
  const ColumnHead& head = heads[static_cast<std::size_t>(section)];
  if (role == Qt::TextAlignmentRole && head.holds == Holds::Numbers)
    return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
  if (role != Qt::DisplayRole) return {};
  return head.holds == Holds::Numbers ? head.text + numberGap : head.text;
}

void LookDelegate::initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const {
  QStyledItemDelegate::initStyleOption(option, index);
  if (option->displayAlignment & Qt::AlignRight) option->text += numberGap;
}

void LookDelegate::paintGround(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) {
  QStyleOptionViewItem ground = option;
  ground.index = index;
  ground.text.clear();
  QApplication::style()->drawControl(QStyle::CE_ItemViewItem, &ground, painter, option.widget);
}

void LookDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const QVariant carried = index.data(lookRole);
  if (!carried.canConvert<Look>()) return QStyledItemDelegate::paint(painter, option, index);
  paintGround(painter, option, index);
  const auto look = carried.value<Look>();
  const bool selected = option.state & QStyle::State_Selected;
  const QColor colour =
      selected ? option.palette.color(QPalette::HighlightedText) : toneColour(look.tone, option.palette);
  painter->save();
  painter->setFont(option.font);
  paintLook(*painter, option.rect.adjusted(6, 0, -4, 0), look, colour);
  painter->restore();
}

}  // namespace steadyturn
