// The wrenches to take, best first.
#pragma once

#include <QAbstractTableModel>
#include <map>
#include <vector>

#include "choose.h"
#include "records.h"

namespace steadyturn {

class OptionsTable : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Column {
    ToolColumn,
    SettingColumn,
    WithinColumn,
    BelowColumn,
    AboveColumn,
    OverColumn,
    DeliversColumn,
    DescriptionColumn,
    columns
  };
  static constexpr int shareRole = Qt::UserRole + 30;  // 0 … 1, painted as a bar
  using QAbstractTableModel::QAbstractTableModel;
  void show(std::vector<Option> options, std::map<std::string, QString> descriptions);
  const Option* at(int row) const;
  int rowOf(const std::string& tool) const;  // −1: it is not offered
  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  QVariant displayed(const Option& option, int column) const;
  std::vector<Option> options_;
  std::map<std::string, QString> descriptions_;
};

}  // namespace steadyturn
