// The checks of one tool at one set-point, newest first.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "records.h"

namespace steadyturn {

class ChecksTable : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Column {
    DateColumn,
    PhaseColumn,
    MeanColumn,
    ScatterColumn,
    UncertaintyColumn,
    VerdictColumn,
    ReferenceColumn,
    ByColumn,
    NumberColumn,
    RemarkColumn,
    columns
  };
  using QAbstractTableModel::QAbstractTableModel;
  void show(const std::vector<Check>& checks, StatedTorque target);
  std::int64_t checkAt(int row) const;  // 0 when there is none
  int rowOf(std::int64_t check) const;

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  struct Row {
    std::int64_t check = 0;
    Date date{};
    Phase phase = Phase::AsFound;
    CheckPoint point;
    QString reference, by, remark;
  };
  QVariant displayed(const Row& row, int column) const;
  std::vector<Row> rows_;
};

}  // namespace steadyturn
