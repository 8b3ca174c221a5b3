// Rows in which every typed word occurs somewhere; sorted by SortRole, so that dates and numbers sort as such.
#pragma once

#include <QSortFilterProxyModel>
#include <QStringList>

namespace steadyturn {

inline constexpr int sortingRole = Qt::UserRole + 1;  // QVariant that compares as the column means

class WordsFilter : public QSortFilterProxyModel {
  Q_OBJECT
 public:
  explicit WordsFilter(QObject* parent = nullptr);
  void setWords(const QString& typed);
  const QStringList& words() const { return words_; }

 protected:
  bool filterAcceptsRow(int row, const QModelIndex& parent) const override;
  bool lessThan(const QModelIndex& left, const QModelIndex& right) const override;

 private:
  QStringList words_;
};

}  // namespace steadyturn
