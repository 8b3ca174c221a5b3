// A plastic part's limit by trial at the Bay: proposed with its source, taken over into a revision, approved by a
// second person.
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "bay_place.h"
#include "desk.h"
#include "limit_line.h"
#include "text.h"

namespace steadyturn {
namespace {

class LimitByTrial : public Desk {
 protected:
  void SetUp() override {
    Desk::SetUp();
    keys_.press(Qt::Key_3, Qt::ControlModifier);
  }
  BayPlace& bay() { return room().bay(); }
  void find(const QString& mark) {
    keys_.type(mark);
    ASSERT_TRUE(wait([&] {
      return bay().model().fastener() && fromText(bay().model().fastener()->id) == mark && !bay().model().working();
    }));
  }
  QPushButton* button(const QString& label) { return labelled<QPushButton>(bay(), label); }
  void propose() {
    find("MB-07");  // plastic, 9 N·m, no limit
    ASSERT_TRUE(says("NO LIMIT ON RECORD"));
    QTest::mouseClick(button(QStringLiteral("Propose a limit…")), Qt::LeftButton);
  }
  QString field(const char* name) { return named<QLineEdit>(bay(), name)->text(); }
  void fill(const char* name, const QString& text) {
    named<QLineEdit>(bay(), name)->setFocus();
    named<QLineEdit>(bay(), name)->selectAll();
    keys_.type(text);
  }
  void choose(const char* name, const QString& text) {
    auto* box = named<QComboBox>(bay(), name);
    box->setFocus();
    keys_.press(Qt::Key_Home);
    while (box->currentText() != text) {
      const int before = box->currentIndex();
      keys_.press(Qt::Key_Down);
      ASSERT_NE(box->currentIndex(), before) << toText(text);
    }
  }
};

// 70 % of a stripping torque of 14 N·m (design practice for screws in plastic) is 9.8 N·m.
TEST_F(LimitByTrial, isShownWithItsSourceTakenOverAndApprovedBySomebodyElse) {
  propose();
  EXPECT_EQ(focusName(), "Torque of the trial");
  EXPECT_TRUE(says("The maker's data come first"));
  EXPECT_TRUE(says("design practice for screws in plastic"));
  EXPECT_FALSE(button("Take it over")->isEnabled()) << "there is no trial yet";
  keys_.type("14");
  EXPECT_TRUE(
      says(QStringLiteral("Limit 9.8 N·m – proposal: 70 % of the stripping torque, stripping torque 14 N·m by "
                          "trial (design practice for screws in plastic)")));
  EXPECT_TRUE(says("not the maker's value: look for the part's own data first"));
  EXPECT_EQ(field("Part's limit"), "") << "it is a proposal until it is taken over";
  answer(Qt::Key_K);
  EXPECT_EQ(field("Part's limit"), "9.8");
  EXPECT_TRUE(field("Limit from, if not the part's data").startsWith("proposal: 70 %"));
  EXPECT_EQ(field("Why it changes"), "a limit proposed by trial");
  EXPECT_TRUE(says("not the maker's value")) << "its source stays in sight";
  EXPECT_EQ(open().fastener("MB-07")->number, 1) << "nothing is on record before it is saved";
  fill("Entered by", "P. Lind");
  answer(Qt::Key_E);
  const auto saved = open().fastener("MB-07");
  ASSERT_EQ(saved->number, 2);
  EXPECT_NEAR(*saved->partLimit, 9.8, 1e-9);
  EXPECT_EQ(saved->limitBasis,
            "proposal: 70 % of the stripping torque, stripping torque 14 N·m by trial (design "
            "practice for screws in plastic)");
  EXPECT_EQ(saved->revisionReason, "a limit proposed by trial");
  ASSERT_TRUE(wait([this] { return !bay().model().working(); }));
  EXPECT_TRUE(says(QStringLiteral("PLASTIC – limit 9.8 N·m, a proposal and not the maker's value")));
  EXPECT_FALSE(button(QStringLiteral("Propose a limit…")));
  // It waits for a second person.
  EXPECT_TRUE(says("NOT RELEASED"));
  EXPECT_TRUE(says("waits for the approval of a second person"));
  fill("By", "P. Lind");
  answer(Qt::Key_K);
  EXPECT_TRUE(says(QStringLiteral("By – not permitted (P. Lind entered this revision): a second person")));
  EXPECT_FALSE(open().fastener("MB-07")->released());
  fill("By", "R. Okoye");
  answer(Qt::Key_K);
  EXPECT_EQ(open().fastener("MB-07")->approvedBy, "R. Okoye");
  EXPECT_EQ(open().fastener("MB-07")->number, 2);
}

TEST_F(LimitByTrial, goesByTheDrivingTorqueAndInAnyUnit) {
  propose();
  choose("What the trial found", "drove the screw in");
  fill("Torque of the trial", "7,5");
  // 70 % of twice 7.5 N·m.
  EXPECT_TRUE(says(QStringLiteral("Limit 10.5 N·m – proposal: 70 % of twice the driving torque")));
  choose("Unit of the trial's torque", QStringLiteral("lbf·in"));
  fill("Torque of the trial", "70");
  // 1 lbf·in is 0.112 985 N·m: 70 % of twice 7.909 N·m.
  EXPECT_TRUE(says(QStringLiteral("Limit 11.07 N·m")));
}

TEST_F(LimitByTrial, isRefusedWhereTheTargetPassesIt) {
  propose();
  keys_.type("12");  // 70 % of it is 8.4 N·m, the target 9
  EXPECT_TRUE(says(QStringLiteral("at most 8.4 N·m")));
  EXPECT_TRUE(says("look up the part's own data"));
  EXPECT_FALSE(button("Take it over")->isEnabled());
  keys_.type("x");
  EXPECT_FALSE(says(QStringLiteral("at most 8.4 N·m")));
  EXPECT_FALSE(button("Take it over")->isEnabled());
}

TEST_F(LimitByTrial, givesWayToTheMakersValue) {
  propose();
  keys_.type("12");
  keys_.press(Qt::Key_Return);  // no limit comes of it, and nothing is saved
  EXPECT_EQ(field("Part's limit"), "");
  keys_.press(Qt::Key_Backspace);
  keys_.type("4");
  keys_.press(Qt::Key_Return);
  EXPECT_EQ(field("Part's limit"), "9.8");
  EXPECT_EQ(open().fastener("MB-07")->number, 1);
  fill("Part's limit", "11");
  EXPECT_EQ(field("Limit from, if not the part's data"), "") << "the trial is not where it comes from";
  EXPECT_TRUE(says("A limit typed anew is the part's own"));
  EXPECT_FALSE(bay().findChild<LimitLine*>()->isVisible());
  fill("Why it changes", "the maker's sheet came");
  keys_.press(Qt::Key_Return);
  EXPECT_EQ(open().fastener("MB-07")->partLimit, 11);
  EXPECT_EQ(open().fastener("MB-07")->limitBasis, "");
}

TEST_F(LimitByTrial, staysInSightWithItsSourceOnTheNextRevision) {
  Fastener fastener = *open().fastener("MB-07");
  fastener.partLimit = 10;
  fastener.limitBasis = "told by the maker on the telephone";
  ASSERT_TRUE(open().reviseFastener(fastener, "asked"));
  find("MB-07");
  keys_.press(Qt::Key_G, Qt::AltModifier);
  EXPECT_TRUE(says(QStringLiteral("Limit 10 N·m – told by the maker on the telephone.")));
  fill("Torque of the trial", "20");  // a trial may take its place
  EXPECT_TRUE(says(QStringLiteral("Limit 14 N·m – proposal")));
}

TEST_F(LimitByTrial, isNotOfferedWhereThePartHasItsOwn) {
  find("MB-02");
  EXPECT_FALSE(button(QStringLiteral("Propose a limit…")));
  keys_.press(Qt::Key_G, Qt::AltModifier);
  EXPECT_TRUE(says("A new revision of MB-02"));
  EXPECT_FALSE(bay().findChild<LimitLine*>()->isVisible());
}

TEST_F(LimitByTrial, isGreyedWithTheReasonForWhoMayNot) {
  signInAsTechnician();
  keys_.press(Qt::Key_3, Qt::ControlModifier);
  find("MB-07");
  auto* propose = button(QStringLiteral("Propose a limit…"));
  ASSERT_TRUE(propose);
  EXPECT_FALSE(propose->isEnabled());
  EXPECT_TRUE(propose->toolTip().contains("a lead may")) << toText(propose->toolTip());
  QTest::mouseClick(propose, Qt::LeftButton);
  EXPECT_FALSE(says("A new revision of MB-07"));
}

}  // namespace
}  // namespace steadyturn
