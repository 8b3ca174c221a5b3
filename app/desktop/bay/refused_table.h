// The wrenches that are left out, and why.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "choose.h"

namespace steadyturn {

class RefusedTable : public QAbstractTableModel {
  Q_OBJECT
 public:
  using QAbstractTableModel::QAbstractTableModel;
  void show(std::vector<RefusedTool> refused);
  QString whyNot(const std::string& tool) const;  // empty: it is not left out
  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  std::vector<RefusedTool> refused_;
};

}  // namespace steadyturn
