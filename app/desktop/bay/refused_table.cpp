#include "refused_table.h"

#include <algorithm>

#include "text.h"

namespace steadyturn {

void RefusedTable::show(std::vector<RefusedTool> refused) {
  beginResetModel();
  refused_ = std::move(refused);
  endResetModel();
}

QString RefusedTable::whyNot(const std::string& tool) const {
  const auto found = std::ranges::find(refused_, tool, &RefusedTool::tool);
  return found == refused_.end() ? QString() : fromText(writeRefusal(found->refusal));
}

int RefusedTable::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(refused_.size());
}

int RefusedTable::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : 2; }

QVariant RefusedTable::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  if (role != Qt::DisplayRole && role != Qt::ToolTipRole) return {};
  const RefusedTool& row = refused_[static_cast<std::size_t>(index.row())];
  return index.column() == 0 ? fromText(row.tool) : fromText(writeRefusal(row.refusal));
}

QVariant RefusedTable::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  return section == 0 ? tr("Left out") : tr("Why");
}

}  // namespace steadyturn
