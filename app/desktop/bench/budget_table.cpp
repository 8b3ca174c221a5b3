#include "budget_table.h"

#include <QFont>
#include <QStringList>

#include "text.h"

namespace steadyturn {
namespace {

QString sourceName(std::string_view source) {
  if (source == "reference") return BudgetTable::tr("Reference standard");
  if (source == "resolution") return BudgetTable::tr("Graduation of the tool");
  if (source == "reproducibility") return BudgetTable::tr("Taken off and put back");
  if (source == "drive") return BudgetTable::tr("Output drive, turned");
  if (source == "interface") return BudgetTable::tr("Adapter, turned");
  if (source == "loading_point") return BudgetTable::tr("Where the hand pulls");
  if (source == "repeatability") return BudgetTable::tr("Repeatability");
  return fromText(source);
}

QString percent(double value) { return QString::number(value, 'f', 2) + QStringLiteral(" %"); }

}  // namespace

void BudgetTable::show(std::vector<BudgetView> views) {
  // The same lines and set-points keep the view where it is scrolled to.
  const bool same = views.size() == views_.size() && !views.empty();
  if (!same) beginResetModel();
  views_ = std::move(views);
  if (!same) return endResetModel();
  emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
  emit headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
}

int BudgetTable::rowCount(const QModelIndex& parent) const {
  return parent.isValid() || views_.empty() ? 0 : sources() + sums;
}

int BudgetTable::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : originColumn() + 1; }

QVariant BudgetTable::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || views_.empty()) return {};
  const int row = index.row();
  const bool figure = index.column() > 0 && index.column() < originColumn();
  switch (role) {
    case Qt::DisplayRole:
      if (index.column() == 0) return nameOf(row);
      if (!figure) return originOf(row);
      return figureOf(row, views_[static_cast<std::size_t>(index.column() - 1)]);
    case Qt::ToolTipRole:
      if (index.column() == originColumn()) return originOf(row);
      if (figure && !isSum(row)) {
        const auto& line = views_[static_cast<std::size_t>(index.column() - 1)].lines[static_cast<std::size_t>(row)];
        return tr("%1 % of the variance").arg(QString::number(line.sharePercent, 'f', 0));
      }
      return {};
    case shareRole:
      if (!figure || isSum(row)) return {};
      return views_[static_cast<std::size_t>(index.column() - 1)].lines[static_cast<std::size_t>(row)].sharePercent;
    case Qt::TextAlignmentRole:
      return figure ? QVariant(Qt::AlignRight | Qt::AlignVCenter) : QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    case Qt::FontRole: {
      if (!isSum(row) || index.column() == originColumn()) return {};
      QFont bold;
      bold.setBold(true);
      return bold;
    }
    default:
      return {};
  }
}

QVariant BudgetTable::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  if (section == 0) return tr("Uncertainty, by source (ISO 6789-2)");
  if (section >= originColumn()) return tr("Where the figure comes from");
  return torqueText(views_[static_cast<std::size_t>(section - 1)].target) + QStringLiteral("   ");
}

QString BudgetTable::nameOf(int row) const {
  if (!isSum(row)) return sourceName(views_.front().lines[static_cast<std::size_t>(row)].source);
  const BudgetView& view = views_.front();
  switch (row - sources()) {
    case Combined:
      return tr("Combined, w");
    case Expanded:
      return tr("Expanded, W = %1 w").arg(fromText(writeRounded(view.coverageFactor)));
    default:
      return tr("Interval, W′");
  }
}

QString BudgetTable::figureOf(int row, const BudgetView& view) const {
  if (!isSum(row)) {
    const BudgetLine& line = view.lines[static_cast<std::size_t>(row)];
    return line.evaluated ? percent(line.standardUncertaintyPercent) : absentText();
  }
  switch (row - sources()) {
    case Combined:
      return percent(view.standardUncertaintyPercent);
    case Expanded:
      return percent(view.expandedUncertaintyPercent);
    default:
      return QStringLiteral("±") + percent(view.intervalPercent);
  }
}

QString BudgetTable::originOf(int row) const {
  if (isSum(row)) {
    switch (row - sources()) {
      case Combined:
        return tr("root of the sum of the squares above");
      case Expanded:
        return tr("covers about 95 %");
      default:
        return tr("|mean deviation| + W + |the reference's own error|");
    }
  }
  QStringList origins;
  for (const BudgetView& view : views_) {
    const QString origin = fromText(view.lines[static_cast<std::size_t>(row)].origin);
    if (!origins.contains(origin)) origins << origin;
  }
  return origins.join(QStringLiteral("; "));
}

}  // namespace steadyturn
