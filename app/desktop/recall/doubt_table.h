// Tightenings in doubt, worst first, or one vehicle after the other with its worst first.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "shop_views.h"

namespace steadyturn {

class DoubtTable : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Column {
    NumberColumn,
    DateColumn,
    VehicleColumn,
    JobColumn,
    FastenerColumn,
    SettingColumn,
    DeviationColumn,
    BelowColumn,
    AboveColumn,
    OverColumn,
    DecisionColumn,
    columns
  };
  using QAbstractTableModel::QAbstractTableModel;
  void show(std::vector<RecallLine> lines, bool byVehicle);
  const RecallLine* lineAt(int row) const;  // nullptr: no such row
  int rowOf(std::int64_t tightening) const;
  int nextUndecided(int after) const;  // from there on and round; −1 when all are decided

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  static QString displayed(const RecallLine& line, int column);
  std::vector<RecallLine> lines_;
};

}  // namespace steadyturn
