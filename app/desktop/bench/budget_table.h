// The uncertainty budgets of a check as it stands: sources down, set-points across, each figure with its share of the
// variance as a bar and, at the end of the line, where it came from. The last lines are what they add up to.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "shop_views.h"

namespace steadyturn {

class BudgetTable : public QAbstractTableModel {
  Q_OBJECT
 public:
  static constexpr int shareRole = Qt::UserRole + 40;  // %, of a source at a set-point
  using QAbstractTableModel::QAbstractTableModel;
  void show(std::vector<BudgetView> views);
  bool empty() const { return views_.empty(); }
  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  enum Sum { Combined, Expanded, IntervalLine, sums };
  int sources() const { return views_.empty() ? 0 : static_cast<int>(views_.front().lines.size()); }
  bool isSum(int row) const { return row >= sources(); }
  int originColumn() const { return static_cast<int>(views_.size()) + 1; }
  QString nameOf(int row) const;
  QString figureOf(int row, const BudgetView& view) const;
  QString originOf(int row) const;

  std::vector<BudgetView> views_;
};

}  // namespace steadyturn
