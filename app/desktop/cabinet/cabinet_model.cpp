#include "cabinet_model.h"

#include <algorithm>

#include "shop_fleet.h"
#include "table_look.h"
#include "text.h"
#include "words_filter.h"

namespace steadyturn {
namespace {

QString deviationText(const ToolOverview& row) {
  if (!row.predictedPercent) return absentText();
  QString text = percentText(*row.predictedPercent);
  if (row.predictionInterval) {
    text += QStringLiteral("  (%1 … %2)")
                .arg(percentText(row.predictionInterval->low), percentText(row.predictionInterval->high));
  }
  return text;
}

QVariant displayed(const ToolOverview& row, int column) {
  switch (column) {
    case CabinetModel::StandingColumn:
      return lookOf(row.standing).word;
    case CabinetModel::ToolColumn:
      return fromText(row.tool.id);
    case CabinetModel::DescriptionColumn:
      return fromText(row.tool.description);
    case CabinetModel::RangeColumn:
      return rangeText(row.tool);
    case CabinetModel::LastCheckColumn:
      return dateText(row.lastCheck);
    case CabinetModel::DeviationColumn:
      return deviationText(row);
    case CabinetModel::DriftColumn:
      return row.slopePercentPerYear ? percentText(*row.slopePercentPerYear) : absentText();
    case CabinetModel::DueColumn:
      return dateText(row.dueDate);
    case CabinetModel::DecidesColumn:
      return row.worstTarget ? torqueText(*row.worstTarget) : absentText();
    default:
      return {};
  }
}

// Columns that say which tool it is, not where it stands.
bool isTheTools(int column) {
  return column == CabinetModel::ToolColumn || column == CabinetModel::DescriptionColumn ||
         column == CabinetModel::RangeColumn;
}

QVariant dateKey(std::optional<Date> date) { return date ? QVariant(toQDate(*date)) : QVariant(); }
QVariant numberKey(std::optional<double> number) { return number ? QVariant(*number) : QVariant(); }

// By the share of the limit that is used up, worst edge of the interval first.
QVariant deviationKey(const ToolOverview& row) {
  if (!row.predictedPercent || row.limitPercent <= 0) return {};
  double far = std::abs(*row.predictedPercent);
  if (row.predictionInterval) {
    far = std::max(std::abs(row.predictionInterval->low), std::abs(row.predictionInterval->high));
  }
  return far / row.limitPercent;
}

QVariant sortedBy(const ToolOverview& row, int column) {
  switch (column) {
    case CabinetModel::StandingColumn:
      // A retired tool asks nothing of anybody: it goes last.
      return row.standing == Standing::Retired ? 100 : static_cast<int>(row.standing);
    case CabinetModel::RangeColumn:
      return row.tool.maximumTorque().torque().newtonMetres();
    case CabinetModel::LastCheckColumn:
      return dateKey(row.lastCheck);
    case CabinetModel::DeviationColumn:
      return deviationKey(row);
    case CabinetModel::DriftColumn:
      return numberKey(row.slopePercentPerYear);
    case CabinetModel::DueColumn:
      return dateKey(row.dueDate);
    case CabinetModel::DecidesColumn:
      return row.worstTarget ? QVariant(row.worstTarget->torque().newtonMetres()) : QVariant();
    default:
      return displayed(row, column);
  }
}

}  // namespace

CabinetModel::CabinetModel(OpenShop& shop, QObject* parent)
    : QAbstractTableModel(parent), shop_(shop), today_(shop.shop().today()), worker_(shop) {
  connect(&shop, &OpenShop::toolsChanged, this, &CabinetModel::refresh);
  if (Result<std::vector<Tool>> tools = shop.shop().tools()) {
    for (Tool& tool : *tools) rows_.emplace_back().tool = std::move(tool);
  }
  refresh();
}

void CabinetModel::refresh() {
  if (asking_) asking_->drop();
  today_ = shop_.shop().today();
  loadGroups();
  setWorking(true);
  asking_ = worker_.run<std::vector<ToolOverview>>(
      [asOf = today_](Shop& shop, const Progress& progress) { return shop.overview(asOf, progress); },
      [this](Result<std::vector<ToolOverview>> rows) {
        setWorking(false);
        if (!rows) return void(emit refused(rows.error()));
        take(std::move(*rows));
      });
}

void CabinetModel::loadGroups() {
  Result<std::map<std::string, std::string>> groups = toolGroups(shop_.shop());
  if (!groups) return void(emit refused(groups.error()));
  groups_ = std::move(*groups);
}

void CabinetModel::take(std::vector<ToolOverview> rows) {
  known_ = true;
  const bool sameTools = rows.size() == rows_.size() && std::equal(rows.begin(), rows.end(), rows_.begin(),
                                                                   [](const ToolOverview& a, const ToolOverview& b) {
                                                                     return a.tool.id == b.tool.id;
                                                                   });
  if (sameTools) {
    rows_ = std::move(rows);
    if (!rows_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, columns - 1));
  } else {
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
  }
  emit refreshed();
}

void CabinetModel::setWorking(bool working) {
  if (working_ == working) return;
  working_ = working;
  emit workingChanged(working);
}

const ToolOverview* CabinetModel::at(int row) const {
  if (row < 0 || row >= rowCount()) return nullptr;
  return &rows_[static_cast<std::size_t>(row)];
}

int CabinetModel::rowOf(const std::string& tool) const {
  const auto found =
      std::find_if(rows_.begin(), rows_.end(), [&tool](const ToolOverview& row) { return row.tool.id == tool; });
  return found == rows_.end() ? -1 : static_cast<int>(found - rows_.begin());
}

std::map<Standing, int> CabinetModel::counts() const {
  std::map<Standing, int> counts;
  if (!known_) return counts;
  for (const ToolOverview& row : rows_) ++counts[row.standing];
  return counts;
}

Result<void> CabinetModel::add(const Tool& tool) { return told(shop_.shop().addTool(tool)); }
Result<void> CabinetModel::hold(const std::string& tool, const std::string& reason) {
  return told(shop_.shop().holdTool(tool, reason));
}
Result<void> CabinetModel::release(const std::string& tool, const std::string& reason) {
  return told(shop_.shop().releaseTool(tool, reason));
}
Result<void> CabinetModel::retire(const std::string& tool, const std::string& reason) {
  return told(shop_.shop().retireTool(tool, reason));
}
Result<void> CabinetModel::group(const std::string& tool, const std::string& name) {
  return told(nameToolGroup(shop_.shop(), tool, name));
}

Result<void> CabinetModel::told(Result<void> done) {
  if (done) emit shop_.toolsChanged();
  return done;
}

int CabinetModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int CabinetModel::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : columns; }

QVariant CabinetModel::data(const QModelIndex& index, int role) const {
  const ToolOverview* row = at(index.row());
  if (!row) return {};
  if (!known_ && !isTheTools(index.column()))
    return role == Qt::DisplayRole ? QVariant(QStringLiteral("…")) : QVariant();
  switch (role) {
    case Qt::DisplayRole:
      return displayed(*row, index.column());
    case sortingRole:
      return sortedBy(*row, index.column());
    case lookRole:
      if (index.column() == StandingColumn) return QVariant::fromValue(lookOf(row->standing));
      return {};
    case figuresRole:
      if (index.column() != DeviationColumn || !row->predictedPercent) return {};
      return QVariant::fromValue(
          DeviationFigures{*row->predictedPercent, row->predictionInterval, row->limitPercent});
    case Qt::TextAlignmentRole:
      if (index.column() == DriftColumn) return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
      return {};
    case Qt::ToolTipRole:
      if (index.column() == StandingColumn && !row->tool.statusReason.empty())
        return fromText(row->tool.statusReason);
      if (index.column() == DescriptionColumn) return fromText(row->tool.description);
      return {};
    default:
      return {};
  }
}

QVariant CabinetModel::headerData(int section, Qt::Orientation orientation, int role) const {
  const ColumnHead heads[] = {{tr("Standing")},
                              {tr("Tool")},
                              {tr("Description")},
                              {tr("Range")},
                              {tr("Last check")},
                              {tr("Deviation today, in its limit")},
                              {tr("Drift a year"), Holds::Numbers},
                              {tr("Due")},
                              {tr("Decided at")}};
  return columnHead(heads, section, orientation, role);
}

}  // namespace steadyturn
