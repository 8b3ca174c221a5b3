// The fasteners found, two lines each: what it is, and where.
#pragma once

#include <QAbstractListModel>
#include <QStyledItemDelegate>
#include <vector>

#include "records.h"

namespace steadyturn {

class FastenerList : public QAbstractListModel {
  Q_OBJECT
 public:
  static constexpr int secondLineRole = Qt::UserRole + 20;
  static constexpr int plasticRole = Qt::UserRole + 21;  // bool
  using QAbstractListModel::QAbstractListModel;
  void show(std::vector<Fastener> fasteners);
  const Fastener* at(int row) const;
  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;

 private:
  std::vector<Fastener> fasteners_;
};

class FastenerDelegate : public QStyledItemDelegate {
  Q_OBJECT
 public:
  using QStyledItemDelegate::QStyledItemDelegate;
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

}  // namespace steadyturn
