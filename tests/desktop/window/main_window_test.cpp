#include "main_window.h"

#include <QAbstractButton>
#include <QFile>
#include <QLabel>
#include <QPushButton>
#include <QSqlDatabase>
#include <QSqlQuery>

#include "bench_place.h"
#include "cabinet_place.h"
#include "demo_file.h"
#include "demo_shop.h"
#include "first_run_page.h"
#include "keys.h"
#include "message_line.h"
#include "settings.h"
#include "shop_room.h"
#include "text.h"

namespace steadyturn {
namespace {

class MainWindowTest : public DemoShop {
 protected:
  void show() { present(window_); }
  void openDepot() {
    window_.openShop(shopFile());
    show();
    ASSERT_TRUE(window_.room());
  }
  QString said() {
    for (const MessageLine* line : window_.findChildren<MessageLine*>()) {
      if (line->isVisible()) return line->text();
    }
    return {};
  }
  MainWindow window_;
  Keys keys_;
};

TEST_F(MainWindowTest, firstRunOffersThreeWays) {
  show();
  EXPECT_FALSE(window_.room());
  EXPECT_TRUE(labelled<QPushButton>(window_, "Look round the demo depot"));
  EXPECT_TRUE(labelled<QPushButton>(window_, QStringLiteral("Start a new shop…")));
  EXPECT_TRUE(labelled<QPushButton>(window_, QStringLiteral("Open a shop…")));
}

TEST_F(MainWindowTest, theDemoDepotIsMadeAndOpenedByKeyboard) {
  show();
  QFile::remove(demoFile());
  keys_.press(Qt::Key_D, Qt::AltModifier);
  ASSERT_TRUE(QTest::qWaitFor([this] { return window_.room() != nullptr; }, 60000));
  EXPECT_TRUE(window_.room()->shop().shop().isDemo());
  EXPECT_EQ(settings::lastShop(), demoFile());
}

TEST_F(MainWindowTest, anOpenedShopIsRemembered) {
  openDepot();
  EXPECT_EQ(settings::lastShop(), shopFile());
}

TEST_F(MainWindowTest, aShopThatIsOnlyLookedAtIsNot) {
  openDepot();
  ASSERT_TRUE(Shop::create(toText(file("another.db"))));
  window_.openShop(file("another.db"), Access::Look);
  ASSERT_EQ(window_.room()->shop().address(), toText(file("another.db")));
  EXPECT_EQ(settings::lastShop(), shopFile());
  window_.openShop(file("another.db"));
  EXPECT_EQ(settings::lastShop(), file("another.db"));
}

TEST_F(MainWindowTest, whatIsNoShopIsSaidWithWhatToDoNext) {
  QFile text(file("notes.txt"));
  ASSERT_TRUE(text.open(QIODevice::WriteOnly));
  text.write("this is not a database, only some notes about one\n");
  text.close();
  show();
  for (const QString& address : {file("notes.txt"), file("missing.db"), file(".")}) {
    window_.openShop(address);
    EXPECT_FALSE(window_.room());
    EXPECT_TRUE(said().contains("Ctrl+N")) << toText(said());
  }
  EXPECT_EQ(settings::lastShop(), QString());
}

TEST_F(MainWindowTest, aNewShopIsEmptyAndSaysHowToGoOn) {
  show();
  window_.createShop(file("new.db"));
  ASSERT_TRUE(window_.room());
  EXPECT_TRUE(said().contains("empty")) << toText(said());
  EXPECT_TRUE(window_.room()->shop().shop().tools()->empty());
}

TEST_F(MainWindowTest, aNewShopNeverReplacesAFile) {
  show();
  window_.createShop(shopFile());
  EXPECT_FALSE(window_.room());
  EXPECT_FALSE(said().isEmpty());
  EXPECT_FALSE(open().tools()->empty());
}

TEST_F(MainWindowTest, controlAndADigitLeadToThePlaces) {
  openDepot();
  const std::pair<Qt::Key, Place> places[] = {
      {Qt::Key_1, Place::Bench}, {Qt::Key_3, Place::Bay}, {Qt::Key_4, Place::History}, {Qt::Key_2, Place::Cabinet}};
  for (const auto& [key, place] : places) {
    keys_.press(key, Qt::ControlModifier);
    EXPECT_EQ(window_.room()->place(), place);
  }
}

TEST_F(MainWindowTest, theRailLeadsToThePlaces) {
  openDepot();
  QTest::mouseClick(labelled<QAbstractButton>(window_, "Bay"), Qt::LeftButton);
  EXPECT_EQ(window_.room()->place(), Place::Bay);
}

TEST_F(MainWindowTest, typingSurvivesAnotherPlaceAndAHelpPage) {
  openDepot();
  window_.room()->takeToBench("W06");
  window_.room()->bench().model().setReading(0, 0, "9.9");
  keys_.press(Qt::Key_3, Qt::ControlModifier);
  keys_.press(Qt::Key_F1);
  keys_.press(Qt::Key_Escape);
  EXPECT_EQ(window_.room()->place(), Place::Bay);
  keys_.press(Qt::Key_1, Qt::ControlModifier);
  EXPECT_EQ(window_.room()->bench().model().draft().points[0].readings[0], "9.9");
}

TEST_F(MainWindowTest, closingKeepsReadingsForTheNextStart) {
  openDepot();
  window_.room()->takeToBench("W06");
  window_.room()->bench().model().setReading(0, 0, "9.9");
  EXPECT_TRUE(window_.close());
  MainWindow next;
  next.openShop(shopFile());
  present(next);
  keys_.press(Qt::Key_P, Qt::AltModifier);  // Pick it up at the Bench
  ASSERT_TRUE(wait([&] { return next.room()->place() == Place::Bench; }));
  keys_.press(Qt::Key_G, Qt::AltModifier);  // Go on with W06
  ASSERT_TRUE(wait([&] { return next.room()->bench().model().tool().has_value(); }));
  EXPECT_EQ(next.room()->bench().model().tool()->id, "W06");
  EXPECT_EQ(next.room()->bench().model().draft().points[0].readings[0], "9.9");
}

TEST_F(MainWindowTest, anotherShopLeavesReadingsInTheirOwn) {
  openDepot();
  window_.room()->takeToBench("W06");
  window_.room()->bench().model().setReading(0, 0, "9.9");
  window_.createShop(file("new.db"));
  ASSERT_TRUE(QFile::exists(file("new.db")));
  EXPECT_TRUE(window_.room()->bench().model().waitingDrafts().empty());
  const auto kept = open().drafts();
  ASSERT_TRUE(kept && kept->size() == 1u);
  EXPECT_EQ(kept->front().draft.points[0].readings[0], "9.9");
}

// Where the draft can't be written the window still asks: another program holds the database for longer than a
// person would wait.
TEST_F(MainWindowTest, closingAsksBeforeReadingsAreLost) {
  openDepot();
  window_.room()->takeToBench("W06");
  {
    QSqlDatabase other = QSqlDatabase::addDatabase("QSQLITE", "other");
    other.setDatabaseName(shopFile());
    ASSERT_TRUE(other.open());
    ASSERT_TRUE(QSqlQuery(other).exec("BEGIN IMMEDIATE"));
    window_.room()->bench().model().setReading(0, 0, "9.9");
    EXPECT_FALSE(window_.close());
    EXPECT_TRUE(said().contains("W06")) << toText(said());
    QSqlQuery(other).exec("ROLLBACK");
  }
  QSqlDatabase::removeDatabase("other");
  QTest::mouseClick(labelled<QPushButton>(window_, "Give them up"), Qt::LeftButton);
  EXPECT_TRUE(wait([this] { return !window_.isVisible(); }));
}

TEST_F(MainWindowTest, aCheckSavedAtTheBenchIsSeenInTheCabinet) {
  openDepot();
  ASSERT_TRUE(wait([this] { return !window_.room()->cabinet().model().working(); }));
  window_.room()->takeToBench("W24");  // never checked
  BenchModel& bench = window_.room()->bench().model();
  BenchDraft heading = bench.draft();
  heading.reference = "R2";
  bench.setHeading(heading);
  for (std::size_t p = 0; p < bench.draft().points.size(); ++p) {
    for (std::size_t r = 0; r < bench.draft().points[p].readings.size(); ++r) {
      bench.setReading(p, r, bench.draft().points[p].target);
    }
  }
  ASSERT_TRUE(bench.save());
  ASSERT_TRUE(wait([this] { return !window_.room()->cabinet().model().working(); }));
  const CabinetModel& cabinet = window_.room()->cabinet().model();
  EXPECT_EQ(cabinet.at(cabinet.rowOf("W24"))->lastCheck, cabinet.today());
}

TEST_F(MainWindowTest, theThemeIsRemembered) {
  settings::setTheme(Theme::Dark);
  EXPECT_EQ(settings::theme(), Theme::Dark);
  for (const Theme theme : allThemes) EXPECT_EQ(parseTheme(themeWord(theme)), theme);
  EXPECT_FALSE(parseTheme("mauve"));
}

}  // namespace
}  // namespace steadyturn
