// Service lists made and changed at the Bay, by real keys and clicks.
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QTableView>
#include <algorithm>

#include "bay_place.h"
#include "desk.h"
#include "people_bar.h"
#include "shop_people.h"
#include "text.h"

namespace steadyturn {
namespace {

using Marks = std::vector<std::string>;
const char* const oilVan = "oil and filter, panel van";

class Services : public Desk {
 protected:
  void SetUp() override {
    Desk::SetUp();
    keys_.press(Qt::Key_3, Qt::ControlModifier);
  }
  BayPlace& bay() { return room().bay(); }
  void click(const QString& label) {
    auto* button = labelled<QPushButton>(bay(), label);
    ASSERT_TRUE(button) << toText(label);
    QTest::mouseClick(button, Qt::LeftButton);
  }
  QTableView& lines() { return *named<QTableView>(bay(), "Fasteners of the list, in order"); }
  QLineEdit& name() { return *named<QLineEdit>(bay(), "Name of the list"); }
  void begin() { click(QStringLiteral("Service lists…")); }
  void take(const QString& list) {
    auto* lists = named<QComboBox>(bay(), "List to change");
    lists->setFocus();
    while (lists->currentText() != list) {
      const int before = lists->currentIndex();
      keys_.press(Qt::Key_Down);
      ASSERT_NE(lists->currentIndex(), before) << toText(list) << " is not among the lists";
    }
    lines().setFocus();
  }
  void look(const QString& words) {
    keys_.type(words);
    keys_.press(Qt::Key_Return);
    ASSERT_TRUE(wait([this] { return named<QListView>(bay(), "Fasteners found")->hasFocus(); }));
  }
  void put(const QString& mark) {  // from the search line
    look(mark);
    keys_.press(Qt::Key_Return);
  }
  void clickLine(int row) {
    QTest::mouseClick(lines().viewport(), Qt::LeftButton, {},
                      lines().visualRect(lines().model()->index(row, 1)).center());
  }
  Marks shown() {
    Marks marks;
    for (int row = 0; row < lines().model()->rowCount(); ++row)
      marks.push_back(toText(lines().model()->index(row, 1).data().toString()));
    return marks;
  }
  std::optional<Marks> stored(const std::string& list) {
    const auto services = *open().services();
    const auto found = std::ranges::find(services, list, &ServiceList::name);
    return found == services.end() ? std::nullopt : std::optional(found->fasteners);
  }
};

TEST_F(Services, aNewOneIsMadeByKeyboard) {
  begin();
  keys_.type("brakes, minibus");
  keys_.press(Qt::Key_Return);
  put("MB-02");
  put("VB-01");
  put("MB-07");
  EXPECT_TRUE(says("line 3"));
  EXPECT_FALSE(stored("brakes, minibus"));
  answer(Qt::Key_T);
  EXPECT_EQ(stored("brakes, minibus"), (Marks{"MB-02", "VB-01", "MB-07"}));
  EXPECT_TRUE(says(QStringLiteral("Saved: “brakes, minibus”, MB-02, VB-01, MB-07.")));
  // A job works it down as it stands.
  answer(Qt::Key_P);
  keys_.type("J-70");
  named<QLineEdit>(bay(), "Vehicle of the job")->setFocus();
  keys_.type("minibus 4");
  auto* service = named<QComboBox>(bay(), "List of the service");
  service->setFocus();
  while (service->currentText() != "brakes, minibus") keys_.press(Qt::Key_Down);
  keys_.press(Qt::Key_T, Qt::AltModifier);
  ASSERT_TRUE(bay().model().sheet());
  EXPECT_EQ(bay().model().jobLines().rowCount(), 3);
  EXPECT_EQ(bay().model().jobLines().at(0)->spec.id, "MB-02");
}

TEST_F(Services, orderAndLinesChangeByKeyboard) {
  const Marks before = *stored(oilVan);
  ASSERT_EQ(before.size(), 4u);
  begin();
  take(oilVan);
  EXPECT_EQ(shown(), before);
  keys_.press(Qt::Key_Down, Qt::AltModifier);
  EXPECT_EQ(shown(), (Marks{before[1], before[0], before[2], before[3]}));
  keys_.press(Qt::Key_Down, Qt::AltModifier);
  keys_.press(Qt::Key_Down, Qt::AltModifier);
  keys_.press(Qt::Key_Down, Qt::AltModifier);  // it is the last: it stays
  EXPECT_EQ(shown(), (Marks{before[1], before[2], before[3], before[0]}));
  keys_.press(Qt::Key_Up, Qt::AltModifier);
  keys_.press(Qt::Key_Up);
  keys_.press(Qt::Key_Delete);
  EXPECT_EQ(shown(), (Marks{before[1], before[0], before[3]}));
  EXPECT_EQ(stored(oilVan), before);
  answer(Qt::Key_T);
  EXPECT_EQ(stored(oilVan), (Marks{before[1], before[0], before[3]}));
}

TEST_F(Services, orderAndLinesChangeByMouse) {
  const Marks before = *stored(oilVan);
  begin();
  take(oilVan);
  EXPECT_FALSE(labelled<QPushButton>(bay(), "Save the list")->isEnabled()) << "nothing is changed";
  clickLine(0);
  EXPECT_FALSE(labelled<QPushButton>(bay(), "Up")->isEnabled()) << "the first line";
  clickLine(2);
  click("Up");
  click("Up");
  clickLine(3);
  click("Remove");
  EXPECT_EQ(shown(), (Marks{before[2], before[0], before[1]}));
  name().setFocus();  // and what is double-clicked among the finds goes on it
  keys_.press(Qt::Key_Return);
  look("MB-02");
  auto* found = named<QListView>(bay(), "Fasteners found");
  const QPoint first = found->visualRect(found->model()->index(0, 0)).center();
  QTest::mouseClick(found->viewport(), Qt::LeftButton, {}, first);
  click("Put it on the list");
  EXPECT_EQ(shown().back(), "MB-02");
  QTest::mouseDClick(found->viewport(), Qt::LeftButton, {}, first);
  EXPECT_TRUE(says("on the list already, line 4"));
  click("Save the list");
  EXPECT_EQ(stored(oilVan), (Marks{before[2], before[0], before[1], "MB-02"}));
}

TEST_F(Services, whatIsTypedIsKeptOnLeavingAndOverTheEndOfTheProgram) {
  const Marks before = *stored(oilVan);
  begin();
  keys_.type("half a na");
  keys_.press(Qt::Key_Return);
  put("MB-02");
  take(oilVan);
  keys_.press(Qt::Key_Delete);
  keys_.press(Qt::Key_Escape);
  put("VB-10");  // the Bay shows what is found again, and the page is left
  ASSERT_TRUE(wait([this] { return bay().model().fastener() && bay().model().fastener()->id == "VB-10"; }));
  EXPECT_FALSE(lines().isVisible());
  openAgain();
  keys_.press(Qt::Key_3, Qt::ControlModifier);
  begin();
  EXPECT_EQ(name().text(), "half a na");
  EXPECT_EQ(shown(), Marks{"MB-02"});
  EXPECT_TRUE(says("not saved yet"));
  take(QStringLiteral("oil and filter, panel van (not saved yet)"));
  EXPECT_EQ(shown(), (Marks{before[1], before[2], before[3]}));
  EXPECT_EQ(stored(oilVan), before) << "nothing is on record before it is saved";
  answer(Qt::Key_E);  // give it up
  EXPECT_EQ(shown(), before);
  answer(Qt::Key_K);  // that was a slip
  EXPECT_EQ(shown(), (Marks{before[1], before[2], before[3]}));
  answer(Qt::Key_E);
  EXPECT_EQ(shown(), before);
  openAgain();
  keys_.press(Qt::Key_3, Qt::ControlModifier);
  begin();
  take(oilVan);
  EXPECT_FALSE(says("not saved yet"));
}

TEST_F(Services, whatIsPickedCanBeShownAfterwards) {
  begin();
  keys_.type("x");
  keys_.press(Qt::Key_Return);
  put("MB-02");
  EXPECT_FALSE(bay().model().fastener()) << "picking shows nothing";
  keys_.press(Qt::Key_Tab);
  click("Back");
  auto* found = named<QListView>(bay(), "Fasteners found");
  QTest::mouseClick(found->viewport(), Qt::LeftButton, {}, found->visualRect(found->model()->index(0, 0)).center());
  ASSERT_TRUE(bay().model().fastener());
  EXPECT_EQ(bay().model().fastener()->id, "MB-02");
}

TEST_F(Services, anotherNameIsAnotherList) {
  const Marks before = *stored(oilVan);
  begin();
  take(oilVan);
  name().setFocus();
  name().end(false);
  keys_.type(", long");
  EXPECT_TRUE(says("saved as a list of its own"));
  answer(Qt::Key_T);
  EXPECT_EQ(stored("oil and filter, panel van, long"), before);
  EXPECT_EQ(stored(oilVan), before);
  EXPECT_FALSE(says("saved as a list of its own"));
}

TEST_F(Services, aListInTheWayIsAskedAboutOnce) {
  const Marks before = *stored(oilVan);
  begin();
  keys_.type(oilVan);
  keys_.press(Qt::Key_Return);
  put("MB-02");
  answer(Qt::Key_T);
  EXPECT_TRUE(says("Save again to put yours in its place"));
  EXPECT_EQ(stored(oilVan), before);
  answer(Qt::Key_T);
  EXPECT_EQ(stored(oilVan), Marks{"MB-02"});
}

TEST_F(Services, whatSomebodyElseChangedMeanwhileIsAskedAbout) {
  begin();
  take(oilVan);
  keys_.press(Qt::Key_Delete);
  ASSERT_TRUE(open().setService({.name = oilVan, .fasteners = {"MB-07"}}));
  answer(Qt::Key_T);
  EXPECT_TRUE(says("on record with another list: MB-07"));
  EXPECT_EQ(stored(oilVan), Marks{"MB-07"});
  EXPECT_EQ(shown().size(), 3u);
  answer(Qt::Key_T);
  EXPECT_EQ(stored(oilVan)->size(), 3u);
}

TEST_F(Services, anEmptyListIsRefusedAndStays) {
  begin();
  keys_.type("nothing yet");
  answer(Qt::Key_T);
  EXPECT_TRUE(says("at least one fastener"));
  EXPECT_FALSE(stored("nothing yet"));
  EXPECT_EQ(name().text(), "nothing yet");
}

TEST_F(Services, whoMayNotLooksAndIsToldWhy) {
  signInAsTechnician();
  keys_.press(Qt::Key_3, Qt::ControlModifier);
  begin();
  EXPECT_TRUE(says("The lists can be looked at"));
  take(oilVan);
  EXPECT_EQ(shown(), *stored(oilVan));
  for (const char* shut : {"Up", "Down", "Remove", "Save the list", "Give up changes", "Put it on the list"}) {
    auto* button = labelled<QPushButton>(bay(), shut);
    ASSERT_TRUE(button) << shut;
    EXPECT_FALSE(button->isEnabled()) << shut;
    EXPECT_TRUE(button->toolTip().contains("a lead may")) << shut << ": " << toText(button->toolTip());
  }
  EXPECT_FALSE(name().isEnabled());
  keys_.press(Qt::Key_Delete);
  keys_.press(Qt::Key_Down, Qt::AltModifier);
  answer(Qt::Key_F);
  put("MB-02");
  EXPECT_EQ(shown(), *stored(oilVan));
  EXPECT_TRUE(says("a lead may"));
  named<QComboBox>(room().people(), "Who works here")->setCurrentText("Petra");
  labelled<QPushButton>(*window_, "Sign out")->click();
  named<QComboBox>(room().people(), "Who works here")->setCurrentText("Nora");
  named<QLineEdit>(room().people(), "PIN")->setFocus();
  keys_.type("lead words");
  keys_.press(Qt::Key_Return);
  ASSERT_TRUE(wait([this] { return says("Nora, lead"); }));
  EXPECT_FALSE(says("The lists can be looked at"));
  EXPECT_TRUE(name().isEnabled());
}

}  // namespace
}  // namespace steadyturn
