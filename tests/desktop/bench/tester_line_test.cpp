// A torque tester at the Bench, over a real terminal line of the system's: connected and read by keyboard.
#include "tester_line.h"

#include <QApplication>
#include <QComboBox>
#include <QLineEdit>
#include <QTableWidget>

#include "desk.h"
#include "message_line.h"
#include "text.h"

namespace steadyturn {
namespace {

class TesterAtTheBench : public Desk {
 protected:
  void SetUp() override {
    Desk::SetUp();
    line_ = std::make_unique<TesterLine>(file("tester"));
    take("W06", "R2");
    connectTester();
  }
  void connectTester() {
    answer(Qt::Key_R);  // Torque tester…
    ASSERT_EQ(focusName(), "Port");
    keys_.press(Qt::Key_A, Qt::ControlModifier);
    keys_.type(line_->name());
    answer(Qt::Key_C);  // Connect
    ASSERT_TRUE(bench().tester().isOpen()) << toText(bench().findChild<MessageLine*>()->text());
    keys_.press(Qt::Key_Escape);
    ASSERT_EQ(focusName(), "Set-point 10, reading 1");
  }
  QString reading(std::size_t point, std::size_t number) {
    return bench().model().draft().points[point].readings[number];
  }
  int readings() { return bench().model().draft().typedReadings(); }
  bool comes(int count) {
    return wait([this, count] { return readings() == count; });
  }
  bool tells(const QString& words) {
    return wait([this, words] { return said().contains(words); });
  }
  std::unique_ptr<TesterLine> line_;
};

TEST_F(TesterAtTheBench, fillsTheFocusedCellAndMovesOn) {
  line_->send("10.04 Nm\r\n");
  ASSERT_TRUE(comes(1));
  EXPECT_EQ(reading(0, 0), "10.04");
  EXPECT_EQ(focusName(), "Set-point 10, reading 2");
  keys_.press(Qt::Key_Down);  // the person chooses the cell
  line_->send("36.12 Nm\r\n36,2 N.m\r\n");
  ASSERT_TRUE(comes(3));
  EXPECT_EQ(reading(1, 1), "36.12");
  EXPECT_EQ(reading(1, 2), "36,2");
  EXPECT_EQ(open().drafts()->front().draft.points[1].readings[2], "36.2");  // on disk as a typed one is
}

TEST_F(TesterAtTheBench, aWholeCheckIsReadAndSavedWithTwoKeys) {
  for (const QString& value : passing) {
    line_->send(value.toLatin1() + " Nm\r\n");
    const int before = readings();
    if (!wait([&] { return readings() > before; })) {
      // The same figure twice within a moment is taken for a second press: the person presses once more.
      ASSERT_TRUE(said().contains("twice")) << toText(said());
    }
    QTest::qWait(450);
  }
  ASSERT_EQ(readings(), 15);
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  const Check stored = open().newestChecks(1)->front();
  EXPECT_EQ(stored.verdict, Verdict::Pass);
  EXPECT_EQ(stored.points[0].readings, (std::vector<std::string>{"10.0", "10.1", "9.9", "10.0", "10.1"}));
}

TEST_F(TesterAtTheBench, halfALineIsNoReadingUntilItsEndComes) {
  line_->send("10.");
  QTest::qWait(200);
  EXPECT_EQ(readings(), 0);
  line_->send("07 N");
  QTest::qWait(200);
  EXPECT_EQ(readings(), 0);
  line_->send("m\r");
  ASSERT_TRUE(comes(1));
  EXPECT_EQ(reading(0, 0), "10.07");
}

TEST_F(TesterAtTheBench, noiseIsToldAndFillsNothing) {
  line_->send(QByteArrayLiteral("\xff\x00#~ 8\r\n"));
  ASSERT_TRUE(tells("no reading by its pattern"));
  EXPECT_EQ(readings(), 0);
  line_->send(QByteArray(500, '\x55'));
  line_->send("\r\n");
  ASSERT_TRUE(tells("noise"));
  EXPECT_TRUE(said().contains("9600 baud")) << toText(said());
  EXPECT_EQ(readings(), 0);
  line_->send("10.04 Nm\r\n");
  ASSERT_TRUE(comes(1));
}

TEST_F(TesterAtTheBench, aSecondPressIsLeftOutAndTold) {
  line_->send("10.04 Nm\r\n");
  line_->send("10.04 Nm\r\n");
  ASSERT_TRUE(tells("twice within a moment"));
  EXPECT_EQ(readings(), 1);
  QTest::qWait(450);
  line_->send("10.04 Nm\r\n");  // another pull that reads the same
  ASSERT_TRUE(comes(2));
  EXPECT_EQ(reading(0, 1), "10.04");
}

TEST_F(TesterAtTheBench, anotherUnitIsTakenUpBeforeTheFirstReadingAndRefusedAfterIt) {
  line_->send("7.38 ft-lb\r\n");
  ASSERT_TRUE(comes(1));
  EXPECT_EQ(bench().model().draft().unit, Unit::PoundForceFoot);
  EXPECT_TRUE(said().contains(QStringLiteral("The tester reads in lbf·ft: so does this check now.")))
      << toText(said());
  EXPECT_EQ(named<QComboBox>(bench(), "Read in")->currentText(), QStringLiteral("lbf·ft"));
  // 10 N·m = 7.3756 lbf·ft (1 lbf·ft = 1.355 817 948 N·m, NIST SP 811).
  EXPECT_EQ(bench().model().draft().points[0].target, "7.3756");
  line_->send("10.04 Nm\r\n");
  ASSERT_TRUE(tells(QStringLiteral("10.04 N·m came from the tester, but the readings here are in lbf·ft")));
  EXPECT_EQ(readings(), 1);
}

TEST_F(TesterAtTheBench, theOtherDirectionIsNotTaken) {
  line_->send("-10.04 Nm\r\n");
  ASSERT_TRUE(tells("the other direction"));
  EXPECT_EQ(readings(), 0);
}

TEST_F(TesterAtTheBench, unpluggedInTheMiddleLosesNothingAndIsTakenUpAgain) {
  line_->send("10.02 Nm\r\n10.");
  ASSERT_TRUE(comes(1));
  line_->unplug();
  ASSERT_TRUE(wait([this] { return !bench().tester().isOpen(); }));
  ASSERT_TRUE(tells(QStringLiteral("“10.”")));
  EXPECT_TRUE(said().contains("is unplugged")) << toText(said());
  EXPECT_EQ(reading(0, 0), "10.02");
  EXPECT_EQ(readings(), 1);
  typeLines({"10.03"});  // work goes on by hand
  EXPECT_EQ(reading(0, 1), "10.03");
  line_->plugIn();
  ASSERT_TRUE(tells("is back"));
  line_->send("10.05 Nm\r\n");
  ASSERT_TRUE(comes(3));
  EXPECT_EQ(reading(0, 2), "10.05");
  EXPECT_EQ(open().drafts()->front().draft.points[0].readings[0], "10.02");
}

TEST_F(TesterAtTheBench, aReadingWhileNoCellWaitsIsTold) {
  for (int i = 0; i < 15; ++i) typeLines({"10"});
  line_->send("10.02 Nm\r\n");
  ASSERT_TRUE(tells("while no cell was waiting"));
  keys_.press(Qt::Key_3, Qt::ControlModifier);
  line_->send("10.03 Nm\r\n");
  QTest::qWait(200);
  keys_.press(Qt::Key_1, Qt::ControlModifier);
  EXPECT_TRUE(tells("10.03 came from the tester while no cell was waiting"));
  for (const BenchPoint& point : bench().model().draft().points) {
    for (const QString& one : point.readings) EXPECT_EQ(one, "10");
  }
}

TEST_F(TesterAtTheBench, fillsASetUpToo) {
  answer(Qt::Key_U);
  line_->send("10.02 Nm\r\n10.04 Nm\r\n");
  ASSERT_TRUE(wait([this] { return bench().setup().run(SetupRun::Reproducibility).typedReadings() == 2; }));
  EXPECT_EQ(focusName(), "Series 1, reading 3");
}

TEST_F(TesterAtTheBench, aPatternIsSetAndTriedOnASampleByKeyboard) {
  bench().tester().close();
  answer(Qt::Key_R);
  answer(Qt::Key_R);  // Pattern of a line
  ASSERT_EQ(focusName(), "Pattern of a line");
  keys_.press(Qt::Key_A, Qt::ControlModifier);
  keys_.type("{mark};{value};{unit}");
  answer(Qt::Key_M);  // Peak mark
  keys_.type("PK");
  answer(Qt::Key_L);  // the sample
  keys_.type("PK;10.04;Nm");
  keys_.press(Qt::Key_Return);
  keys_.type("TR;9.1;Nm");
  keys_.press(Qt::Key_Return);
  keys_.type("hello");
  const auto* tried = bench().findChild<QTableWidget*>();
  ASSERT_EQ(tried->rowCount(), 3);
  EXPECT_EQ(tried->item(0, 1)->text(), QStringLiteral("10.04 N·m, marked PK: a reading"));
  EXPECT_EQ(tried->item(1, 1)->text(), QStringLiteral("9.1 N·m, marked TR: no peak, passed over"));
  EXPECT_FALSE(tried->item(2, 1)->text().contains("a reading"));
  answer(Qt::Key_C);
  ASSERT_TRUE(bench().tester().isOpen());
  keys_.press(Qt::Key_Escape);
  line_->send("TR;8.0;Nm\r\nTR;9.9;Nm\r\nPK;10.01;Nm\r\n");
  ASSERT_TRUE(comes(1));
  EXPECT_EQ(reading(0, 0), "10.01");
}

TEST_F(TesterAtTheBench, aPortThatIsNotThereIsNamed) {
  bench().tester().close();
  line_->unplug();
  answer(Qt::Key_R);
  answer(Qt::Key_C);
  EXPECT_FALSE(bench().tester().isOpen());
  EXPECT_TRUE(says(line_->name()));
}

// A tester or foot switch that types like a keyboard: digits and Enter without a pause between them.
using KeyboardWedge = Desk;
TEST_F(KeyboardWedge, fillsTheCellsAsFastAsItTypes) {
  take("W06", "R2");
  for (const QString& value : passing) {
    QWidget* cell = QApplication::focusWidget();
    QTest::keyClicks(cell, value, Qt::NoModifier, 0);
    QTest::keyClick(cell, Qt::Key_Return, Qt::NoModifier, 0);
  }
  EXPECT_EQ(bench().model().draft().typedReadings(), 15);
  EXPECT_EQ(bench().model().draft().points[2].readings[4], "60.0");
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  EXPECT_EQ(open().newestChecks(1)->front().points[2].readings.back(), "60.0");
}

}  // namespace
}  // namespace steadyturn
