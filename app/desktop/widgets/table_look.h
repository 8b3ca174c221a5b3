// The one look of the program's tables: quiet rows, whole-row selection, columns that always fit (no horizontal
// scroll bar).
#pragma once

#include <QStyledItemDelegate>
#include <QTableView>
#include <vector>

#include "looks.h"

namespace steadyturn {

void dressTable(QTableView& table, const QString& accessibleName);
// Widths in characters of the table's font; 0 takes what is left (one column at least).
void setColumns(QTableView& table, const std::vector<int>& characters);

inline constexpr int lookRole = Qt::UserRole + 2;  // a Look; the cell is painted as a badge

// Right-aligned numbers keep clear of the next column's text, in the header and in the cells.
QString numberHead(const QString& heading);

// Paints cells that carry a Look as a badge; the rest as ever.
class LookDelegate : public QStyledItemDelegate {
  Q_OBJECT
 public:
  using QStyledItemDelegate::QStyledItemDelegate;
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;

 protected:
  void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override;
  // Background, selection and focus of a cell, without its text.
  static void paintGround(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index);
};

}  // namespace steadyturn

Q_DECLARE_METATYPE(steadyturn::Look)
