#include "checks_table.h"

#include <algorithm>

#include "table_look.h"
#include "text.h"

namespace steadyturn {
namespace {

// ISO 6789-2:2017: the expanded uncertainty is stated with k = 2.
constexpr double coverageFactor = 2;

bool isNumber(int column) {
  return column == ChecksTable::MeanColumn || column == ChecksTable::ScatterColumn ||
         column == ChecksTable::UncertaintyColumn || column == ChecksTable::NumberColumn;
}

QString remarkOf(const Check& check) {
  QStringList remarks;
  if (check.correctedBy) remarks << ChecksTable::tr("replaced by check %1").arg(*check.correctedBy);
  if (check.corrects) {
    remarks << ChecksTable::tr("corrects check %1: %2").arg(*check.corrects).arg(fromText(check.correctionReason));
  }
  if (!check.note.empty()) remarks << fromText(check.note);
  return remarks.join(QStringLiteral("; "));
}

QString unsigned2(double percent) { return QString::number(percent, 'f', 2) + QStringLiteral(" %"); }

}  // namespace

void ChecksTable::show(const std::vector<Check>& checks, StatedTorque target) {
  beginResetModel();
  rows_.clear();
  for (const Check& check : checks) {
    for (const CheckPoint& point : check.points) {
      if (point.target != target) continue;
      rows_.push_back(
          {check.id, check.date, check.phase, point, fromText(check.reference), fromText(check.by), remarkOf(check)});
    }
  }
  std::reverse(rows_.begin(), rows_.end());
  endResetModel();
}

std::int64_t ChecksTable::checkAt(int row) const {
  return row < 0 || row >= rowCount() ? 0 : rows_[static_cast<std::size_t>(row)].check;
}

int ChecksTable::rowOf(std::int64_t check) const {
  const auto found = std::find_if(rows_.begin(), rows_.end(), [check](const Row& row) { return row.check == check; });
  return found == rows_.end() ? -1 : static_cast<int>(found - rows_.begin());
}

int ChecksTable::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int ChecksTable::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : columns; }

QVariant ChecksTable::displayed(const Row& row, int column) const {
  switch (column) {
    case DateColumn:
      return dateText(row.date);
    case PhaseColumn:
      return phaseText(row.phase);
    case MeanColumn:
      return percentText(row.point.meanDeviation);
    case ScatterColumn:
      return row.point.repeatability ? unsigned2(*row.point.repeatability) : absentText();
    case UncertaintyColumn:
      return unsigned2(coverageFactor * row.point.standardUncertainty);
    case VerdictColumn:
      return lookOf(row.point.verdict).word;
    case ReferenceColumn:
      return row.reference.isEmpty() ? absentText() : row.reference;
    case ByColumn:
      return row.by.isEmpty() ? absentText() : row.by;
    case NumberColumn:
      return QString::number(row.check);
    case RemarkColumn:
      return row.remark;
    default:
      return {};
  }
}

QVariant ChecksTable::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  if (role == Qt::DisplayRole) return displayed(row, index.column());
  if (role == lookRole && index.column() == VerdictColumn) return QVariant::fromValue(lookOf(row.point.verdict));
  if (role == Qt::ToolTipRole && index.column() == RemarkColumn) return row.remark;
  if (role == Qt::TextAlignmentRole && isNumber(index.column())) {
    return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
  }
  return {};
}

QVariant ChecksTable::headerData(int section, Qt::Orientation orientation, int role) const {
  const ColumnHead heads[] = {{tr("Date")},
                              {tr("Phase")},
                              {tr("Mean"), Holds::Numbers},
                              {tr("Scatter s"), Holds::Numbers},
                              {tr("U (k = 2)"), Holds::Numbers},
                              {tr("Verdict")},
                              {tr("Reference")},
                              {tr("By")},
                              {tr("Check"), Holds::Numbers},
                              {tr("Remark")}};
  return columnHead(heads, section, orientation, role);
}

}  // namespace steadyturn
