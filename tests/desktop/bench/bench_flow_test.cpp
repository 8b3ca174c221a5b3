// What the Bench asks, warns of and leads to, by real key events in the program's window.
#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QTableView>
#include <cstdio>

#include "bay_place.h"
#include "desk.h"
#include "history_place.h"
#include "reading_cell.h"
#include "text.h"

namespace steadyturn {
namespace {

constexpr Date day(int y, unsigned m, unsigned d) {
  return std::chrono::sys_days(std::chrono::year(y) / std::chrono::month(m) / std::chrono::day(d));
}

class BenchFlow : public Desk {
 protected:
  // The sentence beneath a cell; empty when that cell is not questioned.
  QString questionBeneath(const QString& cellName) {
    QTest::qWait(50);  // for the grid to make room
    const auto* cell = named<QLineEdit>(bench(), cellName);
    if (!cell) return {};
    const QPoint at = cell->mapTo(window_.get(), QPoint(0, cell->height()));
    for (const QLabel* label : bench().findChildren<QLabel*>()) {
      if (!label->isVisible() || !label->text().contains("would be")) continue;
      const QPoint there = label->mapTo(window_.get(), QPoint());
      if (there.y() >= at.y() && there.y() - at.y() < 60) return label->text();
    }
    return {};
  }
  std::optional<QString> bayRefuses(const std::string& tool) {
    keys_.press(Qt::Key_3, Qt::ControlModifier);
    BayModel& bay = room().bay().model();
    bay.choose(*room().shop().shop().fastener("MB-02"));
    if (!wait([&bay] { return !bay.working(); })) return std::nullopt;
    const QString why = bay.refused().whyNot(tool);
    if (why.isEmpty() && bay.options().rowOf(tool) < 0) return std::nullopt;
    return why;
  }
};

// 88.5 lbf·in are 9.999 N·m (1 lbf·in = 0.112 984 829 N·m, NIST SP 811 App. B).
TEST_F(BenchFlow, aReadingInAnotherUnitIsQuestionedInPlaceOnceItIsFinished) {
  take("W06", "R2");
  const QString cell = focusName();
  keys_.type("88.5");
  EXPECT_EQ(questionBeneath(cell), QString());  // half typed is no question
  keys_.press(Qt::Key_Return);
  EXPECT_TRUE(questionBeneath(cell).contains(QStringLiteral("88.5 lbf·in would be 10 N·m")))
      << toText(questionBeneath(cell));
  EXPECT_EQ(bench().model().draft().points[0].readings[0], "88.5");  // asked, never changed
  EXPECT_NE(focusName(), cell);                                      // and nothing holds the work up
  EXPECT_TRUE(says(QStringLiteral("? −88.7 %")));                    // (10 − 88.5) / 88.5, by hand
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  EXPECT_EQ(open().newestChecks(1)->front().points[0].readings.front(), "88.5");
}

TEST_F(BenchFlow, aLostDigitIsQuestionedAndTheQuestionGoesWithIt) {
  take("W06", "R2");
  keys_.press(Qt::Key_Down);
  const QString cell = focusName();
  typeLines({"3.1"});  // 36.1 without its 6
  EXPECT_TRUE(questionBeneath(cell).contains(QStringLiteral("36.1 N·m but for a lost digit")))
      << toText(questionBeneath(cell));
  EXPECT_EQ(bench().model().draft().points[1].readings[0], "3.1");
  EXPECT_TRUE(says("One reading is questioned above; it counts as it was typed."));
  keys_.press(Qt::Key_Tab, Qt::ShiftModifier);
  EXPECT_EQ(focusName(), cell);
  typeLines({"36.1"});  // the focused text is selected: typing replaces it
  EXPECT_EQ(questionBeneath(cell), QString());
  EXPECT_EQ(bench().model().draft().points[1].readings[0], "36.1");
}

TEST_F(BenchFlow, aDoubtfulReferenceIsNamedBeforeTheFirstReading) {
  {
    Shop shop = open();
    Reference reference;
    reference.id = "R9";
    reference.description = "old transducer";
    reference.due = day(2025, 1, 31);
    reference.expandedUncertaintyPercent = 2;  // a quarter of ±4 % is 1 % (ISO 6789-1, from memory)
    ASSERT_TRUE(shop.addReference(reference));
    ASSERT_TRUE(shop.setReferenceRange("R9", {.low = 1, .high = 25, .unit = Unit::NewtonMetre}));
  }
  openAgain();
  take("W06", "R9");
  EXPECT_EQ(bench().model().draft().typedReadings(), 0);
  EXPECT_TRUE(doubts().contains("R9 was due on 2025-01-31")) << toText(doubts());
  EXPECT_TRUE(doubts().contains(QStringLiteral("from 1 to 25 N·m, the tool is checked from 10 N·m to 60 N·m")))
      << toText(doubts());
  EXPECT_TRUE(doubts().contains("at most 1 %")) << toText(doubts());
  // Another reference, and the doubts are gone.
  answer(Qt::Key_E);
  keys_.type("R2");
  keys_.press(Qt::Key_Return);
  EXPECT_EQ(doubts(), QString());
  typeLines({"10.0"});
  EXPECT_EQ(bench().model().draft().typedReadings(), 1);
}

TEST_F(BenchFlow, aToolOnHoldIsNamedWithItsReason) {
  take("W19", "R2");  // held in the demo depot
  EXPECT_TRUE(doubts().contains("W19 is on hold: failed its check as found; waits for a new spring"))
      << toText(doubts());
}

// As found fails → hold → the Bay leaves it out → adjusted → as left passes → release → the Bay offers it.
TEST_F(BenchFlow, aFailedToolGoesOnHoldAndComesBack) {
  take("W06", "R2");
  typeLines(failing);
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  answer(Qt::Key_O);  // Put it on hold…
  EXPECT_EQ(focusName(), "Reason");
  keys_.press(Qt::Key_Return);  // for the reason proposed
  ASSERT_TRUE(wait([this] { return open().tool("W06")->status == ToolStatus::Held; }));
  const auto number = open().newestChecks(1)->front().id;
  const std::string reason = "failed as found on " + writeDate(open().today()) + ", check " + std::to_string(number);
  EXPECT_EQ(open().tool("W06")->statusReason, reason);
  EXPECT_TRUE(doubts().contains(fromText(reason))) << toText(doubts());

  const auto refused = bayRefuses("W06");
  ASSERT_TRUE(refused);
  EXPECT_EQ(*refused, fromText("on hold (" + reason + ")"));
  EXPECT_TRUE(wait([&] { return room().bay().findChildren<QTableView*>().size() > 0; }));

  keys_.press(Qt::Key_1, Qt::ControlModifier);
  answer(Qt::Key_L);  // Adjusted: record as left
  ASSERT_EQ(bench().model().draft().phase, Phase::AsLeft);
  typeLines(passing);
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  EXPECT_EQ(open().newestChecks(1)->front().verdict, Verdict::Pass);
  EXPECT_TRUE(said().contains("It is on hold still.")) << toText(said());
  answer(Qt::Key_O);  // Release it to service…
  keys_.press(Qt::Key_Return);
  ASSERT_TRUE(wait([this] { return open().tool("W06")->status == ToolStatus::InService; }));
  EXPECT_EQ(bayRefuses("W06"), QString());
}

TEST_F(BenchFlow, anAdjustmentThatWasNotEnoughIsDoneAgainTheSameDay) {
  take("W06", "R2");
  typeLines(failing);
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  answer(Qt::Key_L);
  typeLines(failing);
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  const Check notEnough = open().newestChecks(1)->front();
  ASSERT_EQ(notEnough.phase, Phase::AsLeft);
  answer(Qt::Key_L);  // Adjusted again: record as left
  typeLines(passing);
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  const Check left = open().newestChecks(1)->front();
  EXPECT_EQ(left.phase, Phase::AsLeft);
  EXPECT_EQ(left.verdict, Verdict::Pass);
  EXPECT_EQ(left.corrects, notEnough.id);
  EXPECT_EQ(open().check(notEnough.id)->correctedBy, left.id);
}

class BenchCorrection : public BenchFlow {
 protected:
  void SetUp() override {
    BenchFlow::SetUp();
    take("W06", "R2");
    typeLines(passing);
    keys_.press(Qt::Key_S, Qt::ControlModifier);
    wrong_ = open().newestChecks(1)->front();
    ASSERT_EQ(wrong_.tool, "W06");
  }
  Check wrong_;
};

TEST_F(BenchCorrection, isANewRecordWithAReasonAndBothStayInHistory) {
  answer(Qt::Key_F);  // Correct it for a reason…
  EXPECT_EQ(focusName(), "Reason of the correction");
  keys_.type("first reading belongs to W07");
  keys_.press(Qt::Key_Return);
  typeLines({"10.2"});
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  const Check right = open().newestChecks(1)->front();
  ASSERT_EQ(right.corrects, wrong_.id);
  EXPECT_EQ(right.correctionReason, "first reading belongs to W07");
  EXPECT_EQ(right.points[0].readings, (std::vector<std::string>{"10.2", "10.1", "9.9", "10.0", "10.1"}));
  EXPECT_EQ(right.points[2].readings, wrong_.points[2].readings);
  const Check before = *open().check(wrong_.id);
  EXPECT_EQ(before.points[0].readings, wrong_.points[0].readings);
  EXPECT_EQ(before.correctedBy, right.id);
  EXPECT_EQ(bench().model().draft().typedReadings(), 0);
  EXPECT_FALSE(bench().model().draft().corrects);
  EXPECT_TRUE(open().drafts()->empty());

  answer(Qt::Key_Y);  // Open its History
  HistoryModel& history = room().history().model();
  ASSERT_TRUE(wait([&] { return history.story() && !history.working(); }));
  const ChecksTable& table = history.checks();
  ASSERT_GE(table.rowOf(wrong_.id), 0);
  ASSERT_GE(table.rowOf(right.id), 0);
  const auto remark = [&table](std::int64_t check) {
    return table.data(table.index(table.rowOf(check), ChecksTable::RemarkColumn), Qt::DisplayRole).toString();
  };
  EXPECT_TRUE(remark(wrong_.id).contains(QStringLiteral("replaced by check %1").arg(right.id)));
  EXPECT_TRUE(remark(right.id).contains(QStringLiteral("corrects check %1: first reading").arg(wrong_.id)));
}

TEST_F(BenchCorrection, needsAReason) {
  answer(Qt::Key_F);
  keys_.press(Qt::Key_Return);
  typeLines({"10.2"});
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  EXPECT_EQ(open().newestChecks(1)->front().id, wrong_.id);
  EXPECT_TRUE(said().contains("why the check is corrected")) << toText(said());
  EXPECT_EQ(focusName(), "Reason of the correction");
  keys_.type("misread");
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  EXPECT_EQ(open().newestChecks(1)->front().corrects, wrong_.id);
}

TEST_F(BenchCorrection, takesWhatIsTypedASecondTimeForTheSameDay) {
  typeLines({"W06"});  // the Bench is back at the tool
  typeLines({"10.2", "10.2", "10.2", "10.2", "10.2"});
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  EXPECT_EQ(open().newestChecks(1)->front().id, wrong_.id);  // one check a day and phase
  EXPECT_EQ(bench().model().draft().typedReadings(), 5);
  answer(Qt::Key_F);  // These are right: fix check …
  EXPECT_EQ(focusName(), "Reason of the correction");
  keys_.type("typed from the wrong sheet");
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  const Check right = open().newestChecks(1)->front();
  EXPECT_EQ(right.corrects, wrong_.id);
  ASSERT_EQ(right.points.size(), 1u);
  EXPECT_TRUE(open().drafts()->empty());
}

TEST_F(BenchCorrection, ofAnOldCheckStartsInHistoryAndLeavesTheBenchsDayAlone) {
  const Date today = bench().model().draft().date;
  room().history().open("W07");
  keys_.press(Qt::Key_4, Qt::ControlModifier);
  HistoryModel& history = room().history().model();
  ASSERT_TRUE(wait([&] { return history.story() && !history.working(); }));
  keys_.press(Qt::Key_Down);
  keys_.press(Qt::Key_Down);
  const std::int64_t old = history.checks().checkAt(2);
  const Check stored = *open().check(old);
  answer(Qt::Key_O);  // Correct the selected check…
  ASSERT_EQ(room().place(), Place::Bench);
  EXPECT_EQ(bench().model().draft().date, stored.date);
  keys_.type("temperature was forgotten");
  answer(Qt::Key_M);
  keys_.type("21,5");
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  const Check right = *open().check(*open().check(old)->correctedBy);
  EXPECT_EQ(right.date, stored.date);
  EXPECT_EQ(right.temperatureC, 21.5);
  EXPECT_EQ(right.points[0].readings, stored.points[0].readings);
  EXPECT_EQ(bench().model().draft().date, today);
  // A check that is replaced is not corrected a second time.
  EXPECT_FALSE(history.mayCorrect(old) && !history.working());
  EXPECT_FALSE(bench().model().beginCorrection(old));
}

TEST_F(BenchCorrection, thatIsGivenUpLeavesNothing) {
  answer(Qt::Key_F);
  keys_.press(Qt::Key_Return);
  typeLines({"10.2"});
  ASSERT_EQ(open().drafts()->size(), 1u);
  bench().model().giveUpCorrection();
  EXPECT_TRUE(wait([this] { return open().drafts()->empty(); }));
  EXPECT_EQ(open().newestChecks(1)->front().id, wrong_.id);
  EXPECT_EQ(bench().model().draft().typedReadings(), 0);
}

TEST_F(BenchCorrection, neverTakesThePlaceOfReadingsThatAreNotSaved) {
  typeLines({"W06"});  // the Bench is back at the tool
  typeLines({"10.2"});
  bench().correct(wrong_.id);
  EXPECT_TRUE(said().contains("save or clear")) << toText(said());
  EXPECT_EQ(bench().model().draft().typedReadings(), 1);
  EXPECT_FALSE(bench().model().draft().corrects);
}

}  // namespace
}  // namespace steadyturn
