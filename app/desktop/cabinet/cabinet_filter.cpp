#include "cabinet_filter.h"

namespace steadyturn {

CabinetFilter::CabinetFilter(CabinetModel& model, QObject* parent) : WordsFilter(parent), model_(model) {
  setSourceModel(&model);
}

void CabinetFilter::setStanding(std::optional<Standing> standing) {
  standing_ = standing;
  invalidateRowsFilter();
}

bool CabinetFilter::filterAcceptsRow(int row, const QModelIndex& parent) const {
  if (standing_ && model_.at(row)->standing != *standing_) return false;
  return WordsFilter::filterAcceptsRow(row, parent);
}

}  // namespace steadyturn
