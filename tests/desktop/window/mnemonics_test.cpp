// No letter with Alt means two things at once: Qt then does neither.
#include <QAbstractButton>
#include <QLabel>
#include <QMenuBar>
#include <QPushButton>
#include <map>

#include "bay_place.h"
#include "bench_place.h"
#include "demo_shop.h"
#include "foresight_page.h"
#include "history_place.h"
#include "keys.h"
#include "main_window.h"
#include "shop_room.h"
#include "text.h"

namespace steadyturn {
namespace {

using Uses = std::map<QString, QStringList>;

void note(Uses& uses, const QString& text) {
  const QKeySequence key = QKeySequence::mnemonic(text);
  if (!key.isEmpty()) uses[key.toString()] << text;
}

void expectOneUseOfALetter(const MainWindow& window, const char* where) {
  Uses uses;
  for (const QAction* action : window.menuBar()->actions()) note(uses, action->text());
  for (const QLabel* label : window.findChildren<QLabel*>()) {
    if (label->isVisible() && label->buddy()) note(uses, label->text());
  }
  for (const QAbstractButton* button : window.findChildren<QAbstractButton*>()) {
    if (button->isVisible() && button->isEnabled()) note(uses, button->text());
  }
  EXPECT_GT(uses.size(), 3u);
  for (const auto& [key, texts] : uses) {
    EXPECT_EQ(texts.size(), 1) << where << ": " << toText(key) << " is " << toText(texts.join("; "));
  }
}

class Mnemonics : public DemoShop {
 protected:
  void SetUp() override {
    DemoShop::SetUp();
    window_.resize(1280, 800);
    window_.openShop(shopFile());
    present(window_);
  }
  QPushButton* button(const QString& label) { return labelled<QPushButton>(window_, label); }
  void click(const QString& label) {
    QPushButton* found = button(label);
    ASSERT_TRUE(found) << toText(label);
    found->click();
    QTest::qWait(20);
  }
  BenchModel& bench() { return window_.room()->bench().model(); }
  MainWindow window_;
};

TEST_F(Mnemonics, ofTheFirstRunPage) {
  MainWindow first;
  present(first);
  expectOneUseOfALetter(first, "first run");
}

TEST_F(Mnemonics, ofThePlaces) {
  for (const Place place : allPlaces) {
    window_.room()->go(place);
    QTest::qWait(50);
    expectOneUseOfALetter(window_, toText(placeName(place)).c_str());
  }
}

TEST_F(Mnemonics, ofTheBenchInItsStates) {
  window_.room()->takeToBench("W06");
  BenchDraft heading = bench().draft();
  heading.reference = "R2";
  heading.by = "J. Hansen";
  bench().setHeading(heading);
  for (std::size_t p = 0; p < bench().draft().points.size(); ++p) {
    for (std::size_t r = 0; r < bench().draft().points[p].readings.size(); ++r) bench().setReading(p, r, "10.6");
  }
  expectOneUseOfALetter(window_, "readings typed");
  click("Save the check");
  expectOneUseOfALetter(window_, "after a failed check");
  click(QStringLiteral("Put it on hold…"));
  expectOneUseOfALetter(window_, "asked for a reason");
  click("Put on hold");
  expectOneUseOfALetter(window_, "held");
  window_.room()->bench().correct(window_.room()->shop().shop().newestChecks(1)->front().id);
  expectOneUseOfALetter(window_, "correcting");
  click("Don't correct it");
  click(QStringLiteral("Bench set-up…"));
  expectOneUseOfALetter(window_, "set-up");
  click("Back to the check");
  click(QStringLiteral("Torque tester…"));
  expectOneUseOfALetter(window_, "tester");
}

TEST_F(Mnemonics, ofTheCabinetWithItsPanels) {
  window_.room()->takeToBench("W06");
  bench().setReading(0, 0, "9.9");
  window_.openShop(shopFile());  // offers the reading typed
  ASSERT_TRUE(wait([this] { return button(QStringLiteral("Add a tool…")) != nullptr; }));
  expectOneUseOfALetter(window_, "a draft is offered");
  click(QStringLiteral("Alike…"));
  expectOneUseOfALetter(window_, "asked which tools are alike");
  click(QStringLiteral("Papers, due list…"));
  expectOneUseOfALetter(window_, "papers");
  click(QStringLiteral("Add a tool…"));
  expectOneUseOfALetter(window_, "adding a tool");
}

TEST_F(Mnemonics, ofTheHistoryOfATool) {
  window_.room()->history().open("W11");
  window_.room()->go(Place::History);
  ASSERT_TRUE(wait([this] { return !window_.room()->history().model().working(); }));
  QTest::qWait(50);
  expectOneUseOfALetter(window_, "History of a tool");
}

TEST_F(Mnemonics, ofTheCheckingInterval) {
  window_.room()->history().open("W11");
  window_.room()->go(Place::History);
  ASSERT_TRUE(wait([this] { return !window_.room()->history().model().working(); }));
  window_.room()->history().showForesight();
  ASSERT_TRUE(wait([this] { return !window_.room()->history().foresight().model().working(); }));
  QTest::qWait(50);
  expectOneUseOfALetter(window_, "Checking interval");
}

TEST_F(Mnemonics, ofARecall) {
  window_.room()->history().openRecall("W11");
  window_.room()->go(Place::History);
  ASSERT_TRUE(wait([this] { return !window_.room()->history().model().working(); }));
  QTest::qWait(50);
  expectOneUseOfALetter(window_, "Recall");
}

TEST_F(Mnemonics, ofTheBayWithAFastener) {
  window_.room()->go(Place::Bay);
  window_.room()->bay().model().choose(*window_.room()->shop().shop().fastener("MB-02"));
  ASSERT_TRUE(wait([this] { return !window_.room()->bay().model().working(); }));
  QTest::qWait(50);
  expectOneUseOfALetter(window_, "Bay");
}

TEST_F(Mnemonics, ofTheBaysForms) {
  window_.room()->go(Place::Bay);
  click(QStringLiteral("Service lists…"));
  expectOneUseOfALetter(window_, "service lists");
  click("Back");
  click("Open a job");
  expectOneUseOfALetter(window_, "opening a job");
  click("Add a fastener");
  expectOneUseOfALetter(window_, "a new specification");
  window_.room()->bay().model().choose(*window_.room()->shop().shop().fastener("MB-07"));  // plastic without a limit
  ASSERT_TRUE(wait([this] { return !window_.room()->bay().model().working(); }));
  QTest::qWait(50);
  expectOneUseOfALetter(window_, "no limit");
  click(QStringLiteral("Propose a limit…"));
  Keys().type("14");
  expectOneUseOfALetter(window_, "a limit by trial");
}

}  // namespace
}  // namespace steadyturn
