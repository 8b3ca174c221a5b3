// A label scanned anywhere opens its tool; a code typed at a person's pace is only typing.
#include <QApplication>
#include <QLineEdit>
#include <QTextBrowser>
#include <QThread>

#include "bay_place.h"
#include "cabinet_place.h"
#include "desk.h"
#include "history_place.h"
#include "message_line.h"
#include "text.h"

namespace steadyturn {
namespace {

class Scan : public Desk {
 protected:
  // As a scanner that types like a keyboard does: all of it within a moment, then Enter.
  void scan(const QString& code) {
    for (const QChar letter : code) {
      QWidget* focus = QApplication::focusWidget();
      ASSERT_TRUE(focus);
      QTest::keyClick(focus, letter.toLatin1(), Qt::NoModifier, 0);
    }
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return, Qt::NoModifier, 0);
    QTest::qWait(50);
  }
  // Keys as the window system has them waiting: all are there before the program looks at the first.
  void typeAhead(const QString& text) {
    for (const QChar letter : text) {
      const bool enter = letter == '\n';
      const int key = enter ? static_cast<int>(Qt::Key_Return) : QTest::asciiToKey(letter.toLatin1());
      for (const QEvent::Type way : {QEvent::KeyPress, QEvent::KeyRelease})
        qt_handleKeyEvent(window_->windowHandle(), way, key, Qt::NoModifier, enter ? QStringLiteral("\r") : letter);
    }
  }
  void typeSlowly(const QString& text) {
    for (const QChar letter : text) {
      QTest::keyClick(QApplication::focusWidget(), letter.toLatin1());
      QTest::qWait(150);
    }
  }
  std::string onTheBench() { return bench().model().tool() ? bench().model().tool()->id : std::string(); }
  QString focusedText() {
    const auto* line = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    return line ? line->text() : QStringLiteral("no line has the focus");
  }
};

TEST_F(Scan, atTheBenchTakesTheToolUp) {
  scan("STURN:T:W06");
  EXPECT_EQ(onTheBench(), "W06");
  EXPECT_EQ(room().place(), Place::Bench);
}

TEST_F(Scan, amongReadingsLeavesThemAsTheyAre) {
  take("W06", "R2");
  typeLines({"10.0"});
  keys_.type("10.1");  // not finished yet
  scan("STURN:T:W07");
  EXPECT_EQ(onTheBench(), "W07");
  EXPECT_EQ(bench().model().draft().typedReadings(), 0);
  scan("STURN:T:W06");
  EXPECT_EQ(bench().model().draft().points[0].readings[0], "10.0");
  EXPECT_EQ(bench().model().draft().points[0].readings[1], "10.1");
  EXPECT_EQ(bench().model().draft().typedReadings(), 2);
}

TEST_F(Scan, takesTheKeysBehindItToTheToolItTookUp) {
  take("W06", "R2");
  typeLines({"10.0"});
  typeAhead("STURN:T:W07\n10.4\n10.5\n");
  ASSERT_TRUE(wait([this] { return bench().model().draft().typedReadings() == 2; }));
  EXPECT_EQ(onTheBench(), "W07");
  EXPECT_EQ(bench().model().draft().points[0].readings[0], "10.4");
  EXPECT_EQ(bench().model().draft().points[0].readings[1], "10.5");
  scan("STURN:T:W06");
  EXPECT_EQ(bench().model().draft().points[0].readings[0], "10.0");
  EXPECT_EQ(bench().model().draft().typedReadings(), 1);
}

TEST_F(Scan, takesTheKeysBehindItFromTheBenchsOtherPages) {
  take("W06", "R2");
  answer(Qt::Key_U);  // Bench set-up…
  typeLines({"10.00"});
  typeAhead("STURN:T:W07\n10.4\n");
  ASSERT_TRUE(wait([this] { return bench().model().draft().typedReadings() == 1; }));
  EXPECT_EQ(onTheBench(), "W07");
  EXPECT_EQ(bench().setup().draft().typedReadings(), 1);
}

TEST_F(Scan, inTheCabinetOpensItsHistory) {
  keys_.press(Qt::Key_2, Qt::ControlModifier);
  scan("STURN:T:W11");
  EXPECT_EQ(room().place(), Place::History);
  EXPECT_EQ(room().history().model().tool(), "W11");
}

TEST_F(Scan, inTheHistoryOpensThatTool) {
  keys_.press(Qt::Key_4, Qt::ControlModifier);
  scan("STURN:T:W07");
  EXPECT_EQ(room().history().model().tool(), "W07");
}

TEST_F(Scan, inTheBayWithoutAFastenerOpensItsHistory) {
  keys_.press(Qt::Key_3, Qt::ControlModifier);
  scan("STURN:T:W07");
  EXPECT_EQ(room().place(), Place::History);
  EXPECT_EQ(room().history().model().tool(), "W07");
}

TEST_F(Scan, inTheBayTakesTheWrenchOrSaysWhyNot) {
  keys_.press(Qt::Key_3, Qt::ControlModifier);
  BayModel& bay = room().bay().model();
  bay.choose(*room().shop().shop().fastener("MB-02"));
  ASSERT_TRUE(wait([&] { return !bay.working(); }));
  scan("STURN:T:W19");  // held
  EXPECT_EQ(room().place(), Place::Bay);
  EXPECT_TRUE(says("Not W19 here: on hold"));
}

TEST_F(Scan, onAHelpPageLeavesIt) {
  keys_.press(Qt::Key_F1);
  ASSERT_TRUE(window_->findChild<QTextBrowser*>()->isVisible());
  scan("STURN:T:W06");
  EXPECT_FALSE(window_->findChild<QTextBrowser*>()->isVisible());
  EXPECT_EQ(onTheBench(), "W06");
}

TEST_F(Scan, onThePagesOfTheBenchLeadsBackToTheCheck) {
  take("W06", "R2");
  answer(Qt::Key_R);
  scan("STURN:T:W07");
  EXPECT_EQ(onTheBench(), "W07");
  EXPECT_TRUE(named<QLineEdit>(bench(), "Set-point 10, reading 1")->isVisible());
}

TEST_F(Scan, ofAToolThatIsNotHereIsSaid) {
  scan("STURN:T:Q77");
  EXPECT_TRUE(says("Q77"));
  EXPECT_EQ(onTheBench(), "");
}

TEST_F(Scan, ofAToolThatIsNotHereKeepsTheKeysBehindItFromTheToolBefore) {
  take("W06", "R2");
  typeLines({"10.0"});
  keys_.type("10.1");  // not finished yet
  typeAhead("STURN:T:Q77\n10.4\n");
  ASSERT_TRUE(wait([this] { return says("10.4"); }));  // no tool is called that
  EXPECT_TRUE(says("Q77"));
  EXPECT_EQ(onTheBench(), "W06");
  EXPECT_EQ(bench().model().draft().points[0].readings[0], "10.0");
  EXPECT_EQ(bench().model().draft().points[0].readings[1], "10.1");
  EXPECT_EQ(bench().model().draft().typedReadings(), 2);
}

TEST_F(Scan, withoutAShopSaysToOpenOne) {
  MainWindow empty;
  present(empty);
  scan("STURN:T:W06");
  const auto lines = empty.findChildren<MessageLine*>();
  EXPECT_TRUE(std::any_of(lines.begin(), lines.end(), [](const MessageLine* line) {
    return line->isVisible() && line->text().contains("Open the shop of W06 first");
  }));
}

TEST_F(Scan, isHeardThoughTheProgramWasBusyForAMoment) {
  QTest::keyClick(QApplication::focusWidget(), 'S', Qt::NoModifier, 0);
  QThread::msleep(400);
  QCoreApplication::processEvents();
  scan("TURN:T:W06");
  EXPECT_EQ(onTheBench(), "W06");
}

TEST_F(Scan, typedByHandIsOnlyTyping) {
  keys_.press(Qt::Key_2, Qt::ControlModifier);
  for (QLineEdit* line : room().cabinet().findChildren<QLineEdit*>()) {
    if (line->isVisible()) {
      line->setFocus();
      break;
    }
  }
  typeSlowly("STURN:T:W06");
  EXPECT_TRUE(wait([this] { return focusedText() == "STURN:T:W06"; })) << toText(focusedText());
  EXPECT_EQ(room().place(), Place::Cabinet);
}

TEST_F(Scan, keepsNoLetterOfAWordThatBeginsAlike) {
  answer(Qt::Key_N);  // the check's note
  for (const QChar letter : QStringLiteral("STURDY S")) {
    QTest::keyClick(QApplication::focusWidget(), letter.toLatin1(), Qt::NoModifier, 0);
  }
  EXPECT_TRUE(wait([this] { return focusedText() == "STURDY S"; })) << toText(focusedText());
}

}  // namespace
}  // namespace steadyturn
