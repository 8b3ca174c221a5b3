// Nothing is clipped at 1280 × 800.
#include <QAbstractButton>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>

#include "bay_place.h"
#include "bench_states.h"
#include "cabinet_place.h"
#include "demo_shop.h"
#include "foresight_page.h"
#include "history_place.h"
#include "keys.h"
#include "main_window.h"
#include "shop_room.h"
#include "text.h"

namespace steadyturn {
namespace {

void expectWhole(const QWidget& window, const QString& where) {
  EXPECT_LE(window.minimumSizeHint().width(), 1280) << toText(where);
  EXPECT_LE(window.minimumSizeHint().height(), 800) << toText(where);
  for (const QLabel* label : window.findChildren<QLabel*>()) {
    if (!label->isVisible() || label->text().isEmpty()) continue;
    if (!label->wordWrap()) {
      EXPECT_GE(label->width() + 1, label->sizeHint().width()) << toText(where + label->text());
    }
    const int needed = label->wordWrap() ? label->heightForWidth(label->width()) : label->sizeHint().height();
    EXPECT_GE(label->height() + 1, needed) << toText(where + label->text());
  }
  for (const QAbstractButton* button : window.findChildren<QAbstractButton*>()) {
    if (!button->isVisible() || button->text().isEmpty()) continue;
    EXPECT_GE(button->width() + 1, button->minimumSizeHint().width()) << toText(where + button->text());
  }
  for (const QTableView* table : window.findChildren<QTableView*>()) {
    if (!table->isVisible()) continue;
    EXPECT_LE(table->horizontalHeader()->length(), table->viewport()->width()) << toText(where);
    for (int column = 0; column < table->model()->columnCount(); ++column) {
      EXPECT_GE(table->columnWidth(column) + 1, table->horizontalHeader()->sectionSizeHint(column))
          << toText(where + table->model()->headerData(column, Qt::Horizontal).toString());
    }
  }
}

using Layout = DemoShop;

TEST_F(Layout, holdsAtTheSmallestScreen) {
  MainWindow window;
  window.resize(1280, 800);
  present(window);
  expectWhole(window, "first run: ");
  window.openShop(shopFile());
  ShopRoom& room = *window.room();
  ASSERT_TRUE(wait([&] { return !room.cabinet().model().working(); }));
  expectWhole(window, "cabinet: ");
  room.takeToBench("W06");
  QTest::qWait(50);
  expectWhole(window, "bench: ");
  room.takeToBench("W20");  // ten readings
  QTest::qWait(50);
  expectWhole(window, "bench, ten readings: ");
  room.go(Place::Bay);
  const Fastener plastic = *room.shop().shop().fastener("MB-02");
  room.bay().model().choose(plastic);
  ASSERT_TRUE(wait([&] { return !room.bay().model().working(); }));
  QTest::qWait(50);
  expectWhole(window, "bay: ");
  labelled<QPushButton>(window, QStringLiteral("Service lists…"))->click();
  QTest::qWait(50);
  expectWhole(window, "service lists: ");
  room.bay().model().choose(*room.shop().shop().fastener("MB-07"));  // plastic without a limit
  ASSERT_TRUE(wait([&] { return !room.bay().model().working(); }));
  QTest::qWait(50);
  expectWhole(window, "bay, no limit: ");
  labelled<QPushButton>(window, QStringLiteral("Propose a limit…"))->click();
  named<QLineEdit>(window, "Torque of the trial")->setText("14");
  labelled<QPushButton>(window, "Take it over")->click();
  QTest::qWait(50);
  expectWhole(window, "limit by trial: ");
  room.history().open("W11");
  room.go(Place::History);
  ASSERT_TRUE(wait([&] { return !room.history().model().working(); }));
  QTest::qWait(50);
  expectWhole(window, "history: ");
  room.history().showForesight();
  ASSERT_TRUE(wait([&] { return !room.history().foresight().model().working(); }));
  QTest::qWait(50);
  expectWhole(window, "checking interval: ");
  EXPECT_EQ(window.size(), QSize(1280, 800));  // no place has pushed the window wider
}

TEST_F(Layout, holdsInEveryStateOfTheBench) {
  throughBenchStates(shopFile(), {1280, 800}, [](MainWindow& window, const QString& state) {
    expectWhole(window, "bench, " + state + ": ");
    EXPECT_EQ(window.size(), QSize(1280, 800)) << toText(state);
  });
}

}  // namespace
}  // namespace steadyturn
