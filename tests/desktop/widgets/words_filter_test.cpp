#include "words_filter.h"

#include <gtest/gtest.h>

#include <QStandardItemModel>

namespace steadyturn {
namespace {

void addRow(QStandardItemModel& model, const QString& a, const QString& b, const QVariant& key) {
  auto* first = new QStandardItem(a);
  auto* second = new QStandardItem(b);
  second->setData(key, sortingRole);
  model.appendRow({first, second});
}

TEST(WordsFilter, wantsEveryWordSomewhereInTheRow) {
  QStandardItemModel model;
  addRow(model, "W06", "click wrench, pit 1", 1);
  addRow(model, "W07", "click wrench, pit 2", 2);
  addRow(model, "W19", "dial wrench", 3);
  WordsFilter filter;
  filter.setSourceModel(&model);
  filter.setWords("  WRENCH  pit ");
  EXPECT_EQ(filter.rowCount(), 2);
  filter.setWords("pit w07");
  ASSERT_EQ(filter.rowCount(), 1);
  EXPECT_EQ(filter.index(0, 0).data().toString(), "W07");
  filter.setWords("");
  EXPECT_EQ(filter.rowCount(), 3);
}

TEST(WordsFilter, sortsByMeaningAndPutsTheAbsentLastEitherWay) {
  QStandardItemModel model;
  addRow(model, "a", "10 N·m", 10.0);
  addRow(model, "b", "–", {});
  addRow(model, "c", "9 N·m", 9.0);
  WordsFilter filter;
  filter.setSourceModel(&model);
  const auto order = [&filter] {
    QString ids;
    for (int row = 0; row < filter.rowCount(); ++row) ids += filter.index(row, 0).data().toString();
    return ids;
  };
  filter.sort(1, Qt::AscendingOrder);
  EXPECT_EQ(order(), "cab");
  filter.sort(1, Qt::DescendingOrder);
  EXPECT_EQ(order(), "acb");
}

}  // namespace
}  // namespace steadyturn
