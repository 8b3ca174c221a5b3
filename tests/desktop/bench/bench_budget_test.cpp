// The budget on view against the formulas of ISO 6789-2:2017 (from memory), worked by hand, before and after a bench
// set-up that is typed by keyboard.
#include <QApplication>
#include <QRadioButton>

#include "budget_panel.h"
#include "desk.h"
#include "text.h"

namespace steadyturn {
namespace {

class BenchBudget : public Desk {
 protected:
  QAbstractItemModel& table() { return *bench().findChild<BudgetPanel*>()->model(); }
  QString cell(const QString& source, int column) {
    for (int row = 0; row < table().rowCount(); ++row) {
      if (table().index(row, 0).data().toString().startsWith(source))
        return table().index(row, column).data().toString();
    }
    return QStringLiteral("no line ") + source;
  }
  int share(const QString& source) {
    for (int row = 0; row < table().rowCount(); ++row) {
      if (table().index(row, 0).data().toString().startsWith(source))
        return qRound(table().index(row, 1).data(BudgetTable::shareRole).toDouble());
    }
    return -1;
  }
};

// R2: W_md = 0.5 % (k = 2), own error −0.1 %. W06: one graduation 0.5 N·m. Readings at 10 N·m: 10.0 10.1 9.9 10.0
// 10.1, so deviations 0, −0.990099, 1.010101, 0, −0.990099 %; mean −0.194019 %, s 0.835565 % (n − 1).
//   w_md = 0.5/2 = 0.25; w_r = (0.5/2)/√3/10 × 100 = 1.443376; w_re = s/√5 = 0.373676
//   w = √(0.25² + 1.443376² + 0.373676²) = 1.511776; W = 2 w = 3.023552; W′ = 0.194019 + W + 0.1 = 3.317572
TEST_F(BenchBudget, withoutASetUpCountsThreeSourcesAndNamesTheRest) {
  take("W06", "R2");
  typeLines({"10.0", "10.1", "9.9", "10.0", "10.1"});
  EXPECT_EQ(cell("Reference standard", 1), "0.25 %");
  EXPECT_EQ(cell("Graduation", 1), "1.44 %");
  EXPECT_EQ(cell("Repeatability", 1), "0.37 %");
  EXPECT_EQ(cell("Combined", 1), "1.51 %");
  EXPECT_EQ(cell("Expanded", 1), "3.02 %");
  EXPECT_EQ(cell("Interval", 1), QStringLiteral("±3.32 %"));
  for (const char* source : {"Taken off", "Output drive", "Adapter", "Where the hand"}) {
    EXPECT_EQ(cell(source, 1), QStringLiteral("–"));
    EXPECT_TRUE(cell(source, 2).contains("not evaluated")) << toText(cell(source, 2));
  }
  EXPECT_TRUE(cell("Reference standard", 2).contains("K-2026-0118")) << toText(cell("Reference standard", 2));
}

// Four series of five at 10 N·m with the means 10.00, 10.02, 10.04, 10.01: b_rep = 0.04 / 10.0175 × 100 = 0.399301 %,
// w_rep = b/(2√3) = 0.115268. The drive's span is typed, 0.3 %: w_od = 0.3/(2√3) = 0.086603.
//   w = √(1.511776² + 0.115268² + 0.086603²) = 1.518636; W = 3.037271; W′ = 3.331291
//   shares of w²: reference 2.7, graduation 90.3, w_rep 0.6, w_od 0.3, repeatability 6.1 %
TEST_F(BenchBudget, afterASetUpIsMeasuredAtThisBench) {
  take("W06", "R2");
  answer(Qt::Key_U);  // Bench set-up…
  ASSERT_EQ(focusName(), "Series 1, reading 1");
  for (const char* mean : {"10.00", "10.02", "10.04", "10,01"}) typeLines({mean, mean, mean, mean, mean});
  EXPECT_EQ(focusName(), "Series 1, reading 1");  // Enter in the last cell leads to the next run: the drive
  const auto* run = bench().findChild<QRadioButton*>();
  EXPECT_TRUE(run->text().contains(QStringLiteral("span 0.40 %"))) << toText(run->text());
  answer(Qt::Key_T);  // or type its span
  keys_.type("0,3");
  answer(Qt::Key_B);  // Basis
  keys_.type("report of the wrench's maker");
  answer(Qt::Key_U);  // Save the set-up
  EXPECT_TRUE(said().contains("Bench set-up 1 is saved")) << toText(said());
  EXPECT_TRUE(said().contains("reproducibility 0.40 %")) << toText(said());
  ASSERT_EQ(open().benchSetups()->size(), 1u);

  typeLines({"10.0", "10.1", "9.9", "10.0", "10.1"});
  const QString today = dateText(open().today());
  EXPECT_EQ(cell("Taken off", 1), "0.12 %");
  EXPECT_EQ(cell("Taken off", 2), QStringLiteral("measured at this bench, %1 (set-up 1)").arg(today));
  EXPECT_EQ(cell("Output drive", 1), "0.09 %");
  EXPECT_EQ(cell("Output drive", 2), QStringLiteral("typed %1: report of the wrench's maker (set-up 1)").arg(today));
  EXPECT_TRUE(cell("Adapter", 2).contains("not evaluated"));
  EXPECT_EQ(cell("Combined", 1), "1.52 %");
  EXPECT_EQ(cell("Expanded", 1), "3.04 %");
  EXPECT_EQ(cell("Interval", 1), QStringLiteral("±3.33 %"));
  EXPECT_EQ(share("Reference standard"), 3);
  EXPECT_EQ(share("Graduation"), 90);
  EXPECT_EQ(share("Taken off"), 1);
  EXPECT_EQ(share("Output drive"), 0);
  EXPECT_EQ(share("Repeatability"), 6);
}

TEST_F(BenchBudget, aSetUpHalfTypedStaysThroughAnotherTools) {
  take("W06", "R2");
  answer(Qt::Key_U);
  typeLines({"10.00", "10.02"});
  keys_.press(Qt::Key_Escape);
  answer(Qt::Key_T);
  keys_.type("W07");
  keys_.press(Qt::Key_Return);
  answer(Qt::Key_U);
  typeLines({"10.05"});
  keys_.press(Qt::Key_Escape);
  answer(Qt::Key_T);
  keys_.type("W06");
  keys_.press(Qt::Key_Return);
  answer(Qt::Key_U);
  EXPECT_EQ(bench().setup().run(SetupRun::Reproducibility).series[0].mid(0, 3), QStringList({"10.00", "10.02", ""}));
  EXPECT_EQ(focusName(), "Series 1, reading 3");
}

}  // namespace
}  // namespace steadyturn
