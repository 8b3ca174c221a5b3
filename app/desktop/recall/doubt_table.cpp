#include "doubt_table.h"

#include <algorithm>
#include <map>

#include "table_look.h"
#include "text.h"

namespace steadyturn {
namespace {

QString optionalProbability(const std::optional<double>& probability) {
  return probability ? probabilityText(*probability) : absentText();
}

Look lookOf(const std::optional<RecallDecision>& decision) {
  if (!decision) return {Sign::Ring, Tone::Caution, DoubtTable::tr("to decide")};
  switch (decision->action) {
    case RecallAction::Accept:
      return {Sign::HalfTick, Tone::Info, DoubtTable::tr("accepted")};
    case RecallAction::Retorque:
      return {Sign::Tick, Tone::Good, DoubtTable::tr("re-torque")};
    case RecallAction::ReplacePart:
      return {Sign::Tick, Tone::Good, DoubtTable::tr("replace part")};
  }
  return {};
}

// The store's order is worst first: a vehicle stands where its worst tightening stood.
std::vector<RecallLine> groupedByVehicle(std::vector<RecallLine> lines) {
  std::map<std::string, std::size_t> first;
  for (std::size_t i = 0; i < lines.size(); ++i) first.emplace(lines[i].tightening.vehicle, i);
  std::ranges::stable_sort(lines, {}, [&](const RecallLine& line) { return first.at(line.tightening.vehicle); });
  return lines;
}

}  // namespace

void DoubtTable::show(std::vector<RecallLine> lines, bool byVehicle) {
  beginResetModel();
  lines_ = byVehicle ? groupedByVehicle(std::move(lines)) : std::move(lines);
  endResetModel();
}

const RecallLine* DoubtTable::lineAt(int row) const {
  return row >= 0 && row < rowCount() ? &lines_[static_cast<std::size_t>(row)] : nullptr;
}

int DoubtTable::rowOf(std::int64_t tightening) const {
  const auto found = std::ranges::find(lines_, tightening, [](const RecallLine& line) { return line.tightening.id; });
  return found == lines_.end() ? -1 : static_cast<int>(found - lines_.begin());
}

int DoubtTable::nextUndecided(int after) const {
  for (int i = 1; i <= rowCount(); ++i) {
    const int row = (after + i) % rowCount();
    if (!lineAt(row)->decision) return row;
  }
  return -1;
}

int DoubtTable::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(lines_.size());
}

int DoubtTable::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : columns; }

QString DoubtTable::displayed(const RecallLine& line, int column) {
  const RecallFigure& day = line.result.onTheDay;
  switch (column) {
    case NumberColumn:
      return QString::number(line.tightening.id);
    case DateColumn:
      return dateText(line.tightening.date);
    case VehicleColumn:
      return fromText(line.tightening.vehicle);
    case JobColumn:
      return fromText(line.tightening.job);
    case FastenerColumn:
      return fromText(line.fastener.id) + QStringLiteral(" · ") + fromText(line.fastener.component);
    case SettingColumn:
      return torqueText(line.tightening.settingTorque());
    case DeviationColumn:
      return percentText(day.deviationPercent);
    case BelowColumn:
      return probabilityText(day.probabilityBelow);
    case AboveColumn:
      return probabilityText(day.probabilityAbove);
    case OverColumn:
      return optionalProbability(day.probabilityOverPartLimit);
    default:
      return {};
  }
}

QVariant DoubtTable::data(const QModelIndex& index, int role) const {
  const RecallLine& line = *lineAt(index.row());
  const int column = index.column();
  const bool number = column == NumberColumn || (column >= SettingColumn && column <= OverColumn);
  switch (role) {
    case Qt::DisplayRole:
      return column == DecisionColumn ? lookOf(line.decision).word : displayed(line, column);
    case Qt::TextAlignmentRole:
      return QVariant(number ? Qt::AlignRight | Qt::AlignVCenter : Qt::AlignLeft | Qt::AlignVCenter);
    case lookRole:
      return column == DecisionColumn ? QVariant::fromValue(lookOf(line.decision)) : QVariant();
    case Qt::ToolTipRole:
      if (column == DecisionColumn && line.decision) return fromText(line.decision->reason);
      return displayed(line, column);
    default:
      return {};
  }
}

QVariant DoubtTable::headerData(int section, Qt::Orientation orientation, int role) const {
  const ColumnHead heads[] = {{tr("No."), Holds::Numbers},
                              {tr("Day")},
                              {tr("Vehicle")},
                              {tr("Job")},
                              {tr("Fastener")},
                              {tr("Set to"), Holds::Numbers},
                              {tr("Deviation"), Holds::Numbers},
                              {tr("Below"), Holds::Numbers},
                              {tr("Above"), Holds::Numbers},
                              {tr("Over limit"), Holds::Numbers},
                              {tr("Decision")}};
  return columnHead(heads, section, orientation, role);
}

}  // namespace steadyturn
