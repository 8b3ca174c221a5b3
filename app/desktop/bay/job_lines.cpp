#include "job_lines.h"

#include <algorithm>

#include "text.h"

namespace steadyturn {
namespace {

QString lackingWords(const JobLine& line) {
  QStringList words;
  for (const std::string& missing : missingOf(line)) words << fromText(missing);
  return words.join(QStringLiteral(", "));
}

}  // namespace

void JobLines::show(std::vector<JobLine> lines) {
  beginResetModel();
  lines_ = std::move(lines);
  endResetModel();
}

const JobLine* JobLines::at(int row) const {
  return row < 0 || row >= rowCount() ? nullptr : &lines_[static_cast<std::size_t>(row)];
}

int JobLines::firstLacking() const {
  const auto lacking = std::ranges::find_if(lines_, [](const JobLine& line) { return !missingOf(line).empty(); });
  return lacking == lines_.end() ? -1 : static_cast<int>(lacking - lines_.begin());
}

int JobLines::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(lines_.size());
}

QVariant JobLines::data(const QModelIndex& index, int role) const {
  const JobLine* line = at(index.row());
  if (!line) return {};
  const QString lacking = lackingWords(*line);
  const QString what =
      fromText(line->spec.component) + QStringLiteral(" (") + fromText(line->spec.id) + QLatin1Char(')');
  switch (role) {
    case Qt::DisplayRole:
      return lacking.isEmpty() ? what : what + QLatin1Char('\n') + lacking;
    case Qt::AccessibleTextRole:
    case Qt::ToolTipRole:
      return lacking.isEmpty() ? tr("%1: done").arg(what) : tr("%1: %2").arg(what, lacking);
    case Qt::CheckStateRole:
      return lacking.isEmpty() ? Qt::Checked : line->tightenings.empty() ? Qt::Unchecked : Qt::PartiallyChecked;
    default:
      return {};
  }
}

}  // namespace steadyturn
