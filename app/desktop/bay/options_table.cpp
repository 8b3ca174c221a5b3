#include "options_table.h"

#include <QFont>
#include <algorithm>

#include "table_look.h"
#include "text.h"

namespace steadyturn {
namespace {

bool isNumber(int column) {
  return column == OptionsTable::SettingColumn || column == OptionsTable::BelowColumn ||
         column == OptionsTable::AboveColumn || column == OptionsTable::OverColumn;
}

QString deliversText(const DeliveryResult& delivery) {
  const DeliveredRange& range = delivery.interval;
  const QString high = range.high ? torqueText(*range.high, 3) : QStringLiteral("?");
  return QStringLiteral("%1 … %2").arg(fromText(writeRounded(range.low.value, 3)), high);
}

}  // namespace

void OptionsTable::show(std::vector<Option> options, std::map<std::string, QString> descriptions) {
  beginResetModel();
  options_ = std::move(options);
  descriptions_ = std::move(descriptions);
  endResetModel();
}

const Option* OptionsTable::at(int row) const {
  return row < 0 || row >= rowCount() ? nullptr : &options_[static_cast<std::size_t>(row)];
}

int OptionsTable::rowOf(const std::string& tool) const {
  const auto found = std::ranges::find(options_, tool, &Option::tool);
  return found == options_.end() ? -1 : static_cast<int>(found - options_.begin());
}

int OptionsTable::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(options_.size());
}

int OptionsTable::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : columns; }

QVariant OptionsTable::displayed(const Option& option, int column) const {
  const DeliveryResult& delivery = option.delivery;
  switch (column) {
    case ToolColumn:
      return fromText(option.tool);
    case SettingColumn:
      return torqueText(option.setting);
    case WithinColumn:
      return probabilityText(delivery.probabilityWithin);
    case BelowColumn:
      return probabilityText(delivery.probabilityBelow);
    case AboveColumn:
      return probabilityText(delivery.probabilityAbove);
    case OverColumn:
      return delivery.probabilityOverPartLimit ? probabilityText(*delivery.probabilityOverPartLimit) : absentText();
    case DeliversColumn:
      return deliversText(delivery);
    case DescriptionColumn: {
      const auto found = descriptions_.find(option.tool);
      const QString text = found == descriptions_.end() ? QString() : found->second;
      if (option.basis == OutlookBasis::Fleet) return tr("drift from tools like it; ") + text;
      return option.assumedDrift() ? tr("drift assumed; ") + text : text;
    }
    default:
      return {};
  }
}

QVariant OptionsTable::data(const QModelIndex& index, int role) const {
  const Option* option = at(index.row());
  if (!option) return {};
  const int column = index.column();
  if (role == Qt::DisplayRole) return displayed(*option, column);
  if (role == shareRole && column == WithinColumn) return option->delivery.probabilityWithin;
  if (role == Qt::TextAlignmentRole && isNumber(column))
    return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
  if (role == Qt::FontRole && column <= SettingColumn) {
    QFont bold;
    bold.setBold(true);
    return bold;
  }
  if (role == Qt::ToolTipRole && column == DescriptionColumn) {
    const QString text = displayed(*option, column).toString();
    if (option->basis == OutlookBasis::Fleet) {
      return tr("%1\nToo few checks of its own: its drift is predicted from tools like it.").arg(text);
    }
    return option->assumedDrift()
               ? tr("%1\nToo few checks to know its drift: half the permitted deviation is assumed as uncertainty.")
                     .arg(text)
               : text;
  }
  return {};
}

QVariant OptionsTable::headerData(int section, Qt::Orientation orientation, int role) const {
  const ColumnHead heads[] = {{tr("Take")},
                              {tr("Set it to"), Holds::Numbers},
                              {tr("In the window")},
                              {tr("Below"), Holds::Numbers},
                              {tr("Above"), Holds::Numbers},
                              {tr("Over limit"), Holds::Numbers},
                              {tr("Delivers (95 %)")},
                              {tr("Description")}};
  return columnHead(heads, section, orientation, role);
}

}  // namespace steadyturn
