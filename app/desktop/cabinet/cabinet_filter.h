// The cabinet's rows by typed words and by standing.
#pragma once

#include <optional>

#include "cabinet_model.h"
#include "words_filter.h"

namespace steadyturn {

class CabinetFilter : public WordsFilter {
  Q_OBJECT
 public:
  explicit CabinetFilter(CabinetModel& model, QObject* parent = nullptr);
  void setStanding(std::optional<Standing> standing);
  std::optional<Standing> standing() const { return standing_; }

 protected:
  bool filterAcceptsRow(int row, const QModelIndex& parent) const override;

 private:
  CabinetModel& model_;
  std::optional<Standing> standing_;
};

}  // namespace steadyturn
