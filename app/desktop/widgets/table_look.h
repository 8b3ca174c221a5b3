// The one look of the program's tables: quiet rows, whole-row selection, columns that always fit (no horizontal
// scroll bar).
#pragma once

#include <QStyledItemDelegate>
#include <QTableView>
#include <span>
#include <vector>

#include "looks.h"

namespace steadyturn {

void dressTable(QTableView& table, const QString& accessibleName);
// Widths in characters of the table's font; 0 takes what is left (one column at least).
void setColumns(QTableView& table, const std::vector<int>& characters);

inline constexpr int lookRole = Qt::UserRole + 2;  // a Look; the cell is painted as a badge

// Numbers stand right-aligned and clear of the next column's text, in the header and in the cells.
enum class Holds { Words, Numbers };
struct ColumnHead {
  QString text;
  Holds holds = Holds::Words;
};
// What a model's headerData answers for columns that are headed like this, the first first.
QVariant columnHead(std::span<const ColumnHead> heads, int section, Qt::Orientation orientation, int role);

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
