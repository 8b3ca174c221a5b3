// A bench set-up half typed is on disk at every reading, comes back at the next start, and goes with its saving.
#include <QApplication>

#include "desk.h"
#include "text.h"

namespace steadyturn {
namespace {

class SetupDrafts : public Desk {
 protected:
  SetupModel& setup() { return bench().setup(); }
  std::vector<BenchSetupDraft> kept() { return open().setupDrafts().value(); }
  QStringList series(std::size_t number) { return setup().run(SetupRun::Reproducibility).series[number]; }
  void beginOn(const QString& tool, const QString& reference) {
    take(tool, reference);
    answer(Qt::Key_U);  // Bench set-up…
    ASSERT_EQ(focusName(), "Series 1, reading 1");
  }
  // What is still missing of the four series of five.
  void typeTheRest() {
    while (setup().run(SetupRun::Reproducibility).typedReadings() < 20) typeLines({"10.01"});
  }
};

TEST_F(SetupDrafts, areOnDiskAtEveryReadingAndHalfTypedAMomentLater) {
  beginOn("W06", "R2");
  typeLines({"10.00", "10,02"});
  ASSERT_EQ(kept().size(), 1u) << "as soon as Enter returns";
  EXPECT_EQ(kept().front().readings[0][0], (std::vector<std::string>{"10.00", "10.02", "", "", ""}));
  keys_.type("10.");
  EXPECT_TRUE(wait([this] { return kept().front().readings[0][0][2] == "10."; }));
  answer(Qt::Key_T);  // or type its span
  keys_.type("0,");
  answer(Qt::Key_B);  // Basis
  keys_.type("the maker's");
  EXPECT_TRUE(wait([this] { return kept().front().basis == "the maker's"; }));
  EXPECT_EQ(kept().front().typedSpans[0], "0.");
}

TEST_F(SetupDrafts, areOfferedAtTheNextStartAndGoWithTheSaving) {
  beginOn("W06", "R2");
  typeLines({"10.00", "10.02"});
  openAgain();  // nothing was asked, nothing saved
  EXPECT_EQ(
      said(),
      QStringLiteral("Not saved yet: the bench set-up begun on W06, %1 (2 readings).").arg(dateText(open().today())));
  answer(Qt::Key_G);  // Go on with the set-up on W06
  EXPECT_EQ(focusName(), "Series 1, reading 3");
  EXPECT_TRUE(says("Going on with the bench set-up begun on W06"));
  EXPECT_TRUE(says("Read on R2."));
  EXPECT_EQ(series(0).mid(0, 3), QStringList({"10.00", "10.02", ""}));
  typeTheRest();
  answer(Qt::Key_U);  // Save the set-up
  ASSERT_EQ(open().benchSetups()->size(), 1u);
  EXPECT_EQ(open().benchSetups()->front().reference, "R2");
  EXPECT_EQ(open().benchSetups()->front().readingsOf(SetupRun::Reproducibility)[0],
            (std::vector<std::string>{"10.00", "10.02", "10.01", "10.01", "10.01"}));
  EXPECT_TRUE(kept().empty());
  openAgain();
  EXPECT_EQ(said(), QString());
}

TEST_F(SetupDrafts, waitBesideACheckOfTheSameTool) {
  take("W06", "R2");
  typeLines(passing.mid(0, 1));
  answer(Qt::Key_U);
  typeLines({"10.05"});
  openAgain();
  EXPECT_TRUE(said().contains("the one reading typed earlier for W06")) << toText(said());
  EXPECT_TRUE(said().contains("the bench set-up begun on W06")) << toText(said());
  answer(Qt::Key_G);  // Go on with W06: the check
  typeLines(passing.mid(1));
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  EXPECT_TRUE(open().drafts()->empty());
  EXPECT_EQ(kept().size(), 1u);
  answer(Qt::Key_U);
  EXPECT_EQ(series(0).front(), "10.05");
}

TEST_F(SetupDrafts, keepTheReferenceAndUnitTheyWereReadOnUnlessToldOtherwise) {
  beginOn("W06", "R2");
  typeLines({"10.00"});
  openAgain();
  take("W06", "R1");
  answer(Qt::Key_U);
  EXPECT_TRUE(says("Read on R2."));
  auto* readOnR1 = labelled<QAbstractButton>(bench(), "It is read on R1");
  ASSERT_TRUE(readOnR1);
  QTest::mouseClick(readOnR1, Qt::LeftButton);
  QTest::qWait(20);
  EXPECT_TRUE(says("Read on R1."));
  typeTheRest();
  answer(Qt::Key_U);
  ASSERT_EQ(open().benchSetups()->size(), 1u);
  EXPECT_EQ(open().benchSetups()->front().reference, "R1");
}

TEST_F(SetupDrafts, areDiscardedAndBegunAnewOnlyOnRequest) {
  beginOn("W06", "R2");
  typeLines({"10.00"});
  keys_.press(Qt::Key_Escape);
  answer(Qt::Key_U);
  QTest::mouseClick(labelled<QAbstractButton>(bench(), "Begin anew"), Qt::LeftButton);
  EXPECT_TRUE(wait([this] { return kept().empty(); }));
  EXPECT_EQ(series(0).front(), QString());
  QTest::mouseClick(labelled<QAbstractButton>(bench(), "Put it back"), Qt::LeftButton);
  EXPECT_TRUE(wait([this] { return kept().size() == 1; }));
  EXPECT_EQ(series(0).front(), "10.00");
  openAgain();
  QTest::mouseClick(labelled<QAbstractButton>(bench(), "Discard the set-up on W06"), Qt::LeftButton);
  EXPECT_TRUE(wait([this] { return kept().empty(); }));
  EXPECT_EQ(said(), QString());
}

TEST_F(SetupDrafts, closeTheWindowUnasked) {
  beginOn("W06", "R2");
  keys_.type("10.0");
  EXPECT_TRUE(window_->close());
  ASSERT_EQ(kept().size(), 1u);
  EXPECT_EQ(kept().front().readings[0][0][0], "10.0");
}

}  // namespace
}  // namespace steadyturn
