#include "words_filter.h"

namespace steadyturn {

WordsFilter::WordsFilter(QObject* parent) : QSortFilterProxyModel(parent) {
  setSortRole(sortingRole);
  setDynamicSortFilter(true);
}

void WordsFilter::setWords(const QString& typed) {
  words_ = typed.simplified().split(QLatin1Char(' '), Qt::SkipEmptyParts);
  invalidateRowsFilter();
}

bool WordsFilter::filterAcceptsRow(int row, const QModelIndex& parent) const {
  if (words_.isEmpty()) return true;
  QString all;
  for (int column = 0; column < sourceModel()->columnCount(parent); ++column) {
    all += sourceModel()->index(row, column, parent).data().toString() + QLatin1Char('\n');
  }
  for (const QString& word : words_) {
    if (!all.contains(word, Qt::CaseInsensitive)) return false;
  }
  return true;
}

bool WordsFilter::lessThan(const QModelIndex& left, const QModelIndex& right) const {
  const QVariant a = left.data(sortingRole);
  const QVariant b = right.data(sortingRole);
  // What is absent goes last in either order.
  if (!a.isValid() || !b.isValid()) return (a.isValid() && !b.isValid()) == (sortOrder() == Qt::AscendingOrder);
  return QVariant::compare(a, b) == QPartialOrdering::Less;
}

}  // namespace steadyturn
