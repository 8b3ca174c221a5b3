#include "service_lines.h"

#include "table_look.h"
#include "text.h"

namespace steadyturn {
namespace {

bool isFigure(int column) { return column == ServiceLines::NumberColumn || column == ServiceLines::TorqueColumn; }

}  // namespace

void ServiceLines::show(std::vector<Fastener> fasteners) {
  beginResetModel();
  fasteners_ = std::move(fasteners);
  endResetModel();
}

int ServiceLines::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(fasteners_.size());
}

int ServiceLines::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : columns; }

QVariant ServiceLines::data(const QModelIndex& index, int role) const {
  if (index.row() < 0 || index.row() >= rowCount()) return {};
  const Fastener& fastener = fasteners_[static_cast<std::size_t>(index.row())];
  if (role == Qt::TextAlignmentRole && isFigure(index.column()))
    return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
  if (role != Qt::DisplayRole && role != Qt::ToolTipRole) return {};
  switch (index.column()) {
    case NumberColumn:
      return index.row() + 1;
    case MarkColumn:
      return fromText(fastener.id);
    case ComponentColumn:
      return fromText(fastener.component);
    case AssemblyColumn:
      return fromText(fastener.assembly);
    case TorqueColumn:
      return fastener.target > 0 ? torqueText(fastener.targetTorque()) : absentText();
    default:
      return {};
  }
}

QVariant ServiceLines::headerData(int section, Qt::Orientation orientation, int role) const {
  const ColumnHead heads[] = {{tr("Line"), Holds::Numbers},
                              {tr("Mark")},
                              {tr("What it is")},
                              {tr("Where")},
                              {tr("Target torque"), Holds::Numbers}};
  return columnHead(heads, section, orientation, role);
}

}  // namespace steadyturn
