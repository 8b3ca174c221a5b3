// The fasteners of a service's list, in the order of the work.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "records.h"

namespace steadyturn {

class ServiceLines : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Column { NumberColumn, MarkColumn, ComponentColumn, AssemblyColumn, TorqueColumn, columns };
  using QAbstractTableModel::QAbstractTableModel;
  void show(std::vector<Fastener> fasteners);
  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  std::vector<Fastener> fasteners_;
};

}  // namespace steadyturn
