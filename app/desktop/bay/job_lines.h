// The lines of a job's sheet: a tick for what is whole, and in words what still lacks.
#pragma once

#include <QAbstractListModel>
#include <optional>

#include "job_record.h"

namespace steadyturn {

class JobLines : public QAbstractListModel {
  Q_OBJECT
 public:
  using QAbstractListModel::QAbstractListModel;
  void show(std::vector<JobLine> lines);
  const JobLine* at(int row) const;
  int firstLacking() const;  // −1: all is done
  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;

 private:
  std::vector<JobLine> lines_;
};

}  // namespace steadyturn
