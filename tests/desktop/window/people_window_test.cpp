// Who works at the window: the first lead, signing in, what a role can't use, the bench's lock, the auditor's door.
#include <QAbstractButton>
#include <QApplication>
#include <QComboBox>
#include <QCryptographicHash>
#include <QDir>
#include <QLabel>
#include <QLineEdit>
#include <QMenuBar>
#include <QPushButton>

#include "bay_place.h"
#include "cabinet_place.h"
#include "desk.h"
#include "message_line.h"
#include "people_bar.h"
#include "people_page.h"
#include "shop_people.h"
#include "text.h"

namespace steadyturn {
namespace {

class PeopleWindow : public Desk {
 protected:
  // Nora leads, Petra tightens; the window opens anew with nobody signed in.
  void openWithPeople() {
    Shop shop = open();
    ASSERT_TRUE(addUser(shop, "Nora", AccountRole::Lead, "lead words"));
    ASSERT_TRUE(signIn(shop, "Nora", "lead words"));
    ASSERT_TRUE(addUser(shop, "Petra", AccountRole::Technician, "2468"));
    openAgain();
  }
  PeopleBar& bar() { return room().people(); }
  void enter(const QString& name, const QString& pin) {
    named<QComboBox>(bar(), "Who works here")->setCurrentText(name);
    named<QLineEdit>(bar(), "PIN")->setFocus();
    keys_.type(pin);
    keys_.press(Qt::Key_Return);
    ASSERT_TRUE(
        wait([this] { return signedIn(room().shop().shop()) || says("not permitted") || says("Not permitted"); }));
  }
  QAction* menuEntry(const QString& label) {
    for (QAction* action : window_->findChildren<QAction*>()) {
      if (QString(action->text()).remove('&') == label) return action;
    }
    return nullptr;
  }
  QAbstractButton* button(const QString& label) { return labelled<QAbstractButton>(*window_, label); }
};

TEST_F(PeopleWindow, aShopWithoutAccountsShowsNothingOfThemButTheWayIn) {
  EXPECT_FALSE(bar().isVisible());
  EXPECT_TRUE(menuEntry("Add the first lead…"));
  EXPECT_FALSE(menuEntry("People…"));
  keys_.press(Qt::Key_2, Qt::ControlModifier);
  EXPECT_TRUE(button("Add a tool…")->isEnabled());
  EXPECT_TRUE(button("Alike…")->isEnabled());
}

TEST_F(PeopleWindow, theFirstLeadIsAddedAndGoesOnWorking) {
  menuEntry("Add the first lead…")->trigger();
  keys_.type("Nora");
  keys_.press(Qt::Key_Tab);
  keys_.type("lead words");
  keys_.press(Qt::Key_Tab);
  keys_.type("lead word");
  keys_.press(Qt::Key_Return);
  EXPECT_TRUE(says("not the same"));
  EXPECT_FALSE(hasUsers(open()));
  keys_.type("s");
  keys_.press(Qt::Key_Return);
  ASSERT_TRUE(hasUsers(open()));
  EXPECT_TRUE(says("recovery code, shown this once"));
  keys_.press(Qt::Key_Escape);
  EXPECT_TRUE(bar().isVisible());
  EXPECT_TRUE(says("Nora, lead"));
  EXPECT_TRUE(menuEntry("People…"));
  ASSERT_TRUE(room().shop().shop().holdTool("W06", "fell"));
}

TEST_F(PeopleWindow, nobodySignedInLooksRoundAndIsToldWhyNot) {
  openWithPeople();
  EXPECT_EQ(room().place(), Place::Cabinet) << "the Bench is for checks";
  EXPECT_TRUE(says("Nobody is signed in"));
  auto* hold = button("Hold…");
  ASSERT_TRUE(hold);
  EXPECT_FALSE(hold->isEnabled());
  EXPECT_TRUE(hold->toolTip().contains("sign in")) << toText(hold->toolTip());
  EXPECT_FALSE(button("Bench")->isEnabled());
  EXPECT_TRUE(button("Export…")->isEnabled());
  enter("Nora", "wrong");
  EXPECT_FALSE(signedIn(room().shop().shop()));
  EXPECT_TRUE(named<QLineEdit>(bar(), "PIN")->text().isEmpty());
}

TEST_F(PeopleWindow, aTechnicianHoldsAToolAndReleasesNone) {
  openWithPeople();
  enter("Petra", "2468");
  ASSERT_TRUE(wait([this] { return !room().cabinet().model().working(); }));
  EXPECT_TRUE(says("Petra, technician"));
  EXPECT_TRUE(button("Hold…")->isEnabled());
  for (const char* shut : {"Alike…", "Release…", "Retire…", "Add a tool…", "Import…", "Bench"}) {
    EXPECT_FALSE(button(shut)->isEnabled()) << shut;
    EXPECT_TRUE(button(shut)->toolTip().contains("a lead may")) << shut << ": " << toText(button(shut)->toolTip());
  }
  keys_.press(Qt::Key_1, Qt::ControlModifier);
  EXPECT_NE(room().place(), Place::Bench);
  button("Sign out")->click();
  enter("Nora", "lead words");
  EXPECT_TRUE(button("Bench")->isEnabled());
  EXPECT_TRUE(button("Add a tool…")->isEnabled());
}

TEST_F(PeopleWindow, theBenchLocksAndGoesOnWithAllThatWasTyped) {
  openWithPeople();
  enter("Nora", "lead words");
  keys_.press(Qt::Key_1, Qt::ControlModifier);
  ASSERT_EQ(room().place(), Place::Bench);
  take("W06", "R2");
  typeLines(passing.mid(0, 7));
  keys_.type("36.");  // half a reading
  const QString cell = focusName();
  bar().setMinutes(0.002);
  keys_.type("0");
  ASSERT_TRUE(wait([this] { return bar().locked(); }));
  EXPECT_FALSE(bench().isEnabled());
  EXPECT_TRUE(bench().isVisible());
  EXPECT_EQ(open().drafts()->size(), 1U) << "kept on disk before it locked";
  bar().setMinutes(10);
  keys_.type("lead words");  // the PIN has the focus
  keys_.press(Qt::Key_Return);
  ASSERT_TRUE(wait([this] { return !bar().locked(); }));
  EXPECT_TRUE(bench().isEnabled());
  EXPECT_EQ(focusName(), cell);
  EXPECT_EQ(bench().model().draft().points[1].readings[2], "36.0");
  keys_.press(Qt::Key_Return);
  typeLines(passing.mid(8));
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  const auto newest = open().newestChecks(1)->front();
  EXPECT_EQ(newest.tool, "W06");
  EXPECT_EQ(newest.by, "Nora");
}

TEST_F(PeopleWindow, theAuditorsDoorLeavesNoTrace) {
  window_.reset();
  const auto picture = [this] {
    QStringList lines;
    for (const auto& info : QDir(file(".")).entryInfoList(QDir::Files | QDir::Hidden, QDir::Name)) {
      QFile bytes(info.filePath());
      EXPECT_TRUE(bytes.open(QIODevice::ReadOnly));
      lines << info.fileName() + QCryptographicHash::hash(bytes.readAll(), QCryptographicHash::Sha256).toHex();
    }
    return lines.join('\n');
  };
  const QString before = picture();
  window_ = std::make_unique<MainWindow>();
  window_->openShop(shopFile(), Access::Look);
  present(*window_);
  ASSERT_TRUE(window_->room());
  EXPECT_TRUE(says("looked at alone"));
  EXPECT_TRUE(window_->windowTitle().contains("read only")) << "when the message is put away";
  EXPECT_FALSE(bar().isVisible());
  ASSERT_TRUE(wait([this] { return !room().cabinet().model().working(); }));
  for (const char* shut : {"Alike…", "Hold…", "Retire…", "Add a tool…", "Import…", "Bench"}) {
    EXPECT_FALSE(button(shut)->isEnabled()) << shut;
  }
  for (const auto key : {Qt::Key_3, Qt::Key_4, Qt::Key_2}) keys_.press(key, Qt::ControlModifier);
  room().bay().model().choose(*room().shop().shop().fastener("MB-02"));
  ASSERT_TRUE(wait([this] { return !room().bay().model().working(); }));
  EXPECT_EQ(picture(), before);
  window_.reset();
  EXPECT_EQ(picture(), before);
}

}  // namespace
}  // namespace steadyturn
