#include "bench_model.h"

#include <gmock/gmock.h>

#include "bench_words.h"
#include "demo_shop.h"
#include "text.h"

namespace steadyturn {
namespace {

using ::testing::ElementsAre;

class BenchModelTest : public DemoShop {
 protected:
  void SetUp() override {
    DemoShop::SetUp();
    shop_ = std::make_unique<OpenShop>(open());
    keeper_ = std::make_unique<DraftKeeper>(*shop_);
    model_ = std::make_unique<BenchModel>(*shop_, *keeper_);
    ASSERT_TRUE(model_->pickTool("W06"));
    BenchDraft heading = model_->draft();
    heading.reference = "R2";
    heading.by = "tester";
    model_->setHeading(heading);
  }
  // Readings that lie `percent` off every set-point.
  void typeAll(double factor) {
    for (std::size_t p = 0; p < model_->draft().points.size(); ++p) {
      const double target = model_->draft().points[p].target.toDouble();
      for (std::size_t r = 0; r < model_->draft().points[p].readings.size(); ++r) {
        model_->setReading(p, r, QString::number(target * factor, 'f', 2));
      }
    }
  }
  std::unique_ptr<OpenShop> shop_;
  std::unique_ptr<DraftKeeper> keeper_;
  std::unique_ptr<BenchModel> model_;
};

TEST_F(BenchModelTest, proposesWhatTheStandardAsksFor) {
  // ISO 6789-1:2017 (from memory): lowest marked value, about 60 %, 100 %; five readings for type II class A.
  ASSERT_EQ(model_->draft().points.size(), 3u);
  EXPECT_EQ(model_->draft().points[0].target, "10");
  EXPECT_EQ(model_->draft().points[1].target, "36");
  EXPECT_EQ(model_->draft().points[2].target, "60");
  EXPECT_EQ(model_->draft().points[0].readings.size(), 5u);
}

TEST_F(BenchModelTest, figuresAppearAtEveryReading) {
  EXPECT_FALSE(model_->result());
  model_->setReading(0, 0, "9.9");
  // a = (10 − 9.9) / 9.9 × 100 % (ISO 6789-1), by hand 1.0101 %.
  ASSERT_TRUE(model_->figures()[0].deviations[0]);
  EXPECT_NEAR(*model_->figures()[0].deviations[0], 1.010101, 1e-6);
  ASSERT_TRUE(model_->result());
  EXPECT_EQ(model_->result()->verdict, Verdict::Pass);
  model_->setReading(1, 2, "40");
  EXPECT_NEAR(*model_->figures()[1].deviations[2], -10.0, 1e-9);  // (36 − 40) / 40, by hand
  EXPECT_EQ(model_->result()->verdict, Verdict::Fail);
  EXPECT_FALSE(model_->figures()[1].deviations[0]);
}

TEST_F(BenchModelTest, takesCommaAndPointAlike) {
  model_->setReading(0, 0, "9,9");
  model_->setReading(0, 1, "9.9");
  EXPECT_EQ(*model_->figures()[0].deviations[0], *model_->figures()[0].deviations[1]);
}

TEST_F(BenchModelTest, aTextThatIsNoNumberIsKeptNamedAndNotSaved) {
  typeAll(1.0);
  model_->setReading(1, 3, "3O.1");
  ASSERT_TRUE(model_->firstBadCell());
  EXPECT_EQ(model_->firstBadCell()->point, 1);
  EXPECT_EQ(model_->firstBadCell()->reading, 3);
  const auto before = open().newestChecks(1)->front().id;
  const Result<SavedCheck> saved = model_->save();
  ASSERT_FALSE(saved);
  EXPECT_EQ(saved.error().front().found, "3O.1");
  EXPECT_EQ(open().newestChecks(1)->front().id, before);
  EXPECT_EQ(model_->draft().points[1].readings[3], "3O.1");
}

TEST_F(BenchModelTest, anotherToolTakenByAccidentLosesNothing) {
  model_->setReading(0, 0, "9.9");
  ASSERT_TRUE(model_->pickTool("W07"));
  EXPECT_EQ(model_->draft().typedReadings(), 0);
  EXPECT_EQ(model_->draft().reference, "R2");  // the bench is the same
  model_->setReading(0, 0, "10.1");
  EXPECT_THAT(model_->unsavedTools(), ElementsAre("W07", "W06"));
  ASSERT_TRUE(model_->pickTool("W06"));
  EXPECT_EQ(model_->draft().points[0].readings[0], "9.9");
  ASSERT_TRUE(model_->pickTool("W07"));
  EXPECT_EQ(model_->draft().points[0].readings[0], "10.1");
}

TEST_F(BenchModelTest, clearedReadingsCanBePutBack) {
  model_->setReading(0, 0, "9.9");
  const std::vector<BenchPoint> before = model_->clearReadings();
  EXPECT_EQ(model_->draft().typedReadings(), 0);
  model_->putBack(before);
  EXPECT_EQ(model_->draft().points[0].readings[0], "9.9");
}

TEST_F(BenchModelTest, anotherUnitRestatesTheSetPointsAndLeavesTheReadings) {
  model_->setReading(1, 0, "26.55");
  model_->setUnit(Unit::PoundForceFoot);
  // 1 lbf·ft = 1.355 817 948 N·m (NIST SP 811): 36 N·m = 26.552 lbf·ft.
  EXPECT_EQ(model_->draft().points[1].target, "26.552");
  EXPECT_EQ(model_->draft().points[1].readings[0], "26.55");
  EXPECT_NEAR(*model_->figures()[1].deviations[0], (26.552 - 26.55) / 26.55 * 100, 1e-9);
}

TEST_F(BenchModelTest, aSavedCheckIsInTheShopAndTheDraftIsEmpty) {
  typeAll(1.0);
  const Result<SavedCheck> saved = model_->save();
  ASSERT_TRUE(saved);
  EXPECT_TRUE(saved->due);
  const Result<Check> stored = open().check(saved->check.id);
  ASSERT_TRUE(stored);
  EXPECT_EQ(stored->tool, "W06");
  EXPECT_EQ(stored->by, "tester");
  EXPECT_EQ(stored->points.size(), 3u);
  EXPECT_EQ(stored->points[1].readings, (std::vector<std::string>(5, "36.00")));
  EXPECT_EQ(model_->draft().typedReadings(), 0);
  EXPECT_TRUE(model_->unsavedTools().empty());
  EXPECT_TRUE(savedWords(*saved).contains(QString::number(saved->check.id)));
}

TEST_F(BenchModelTest, saysWhatTheCheckLeavesOpen) {
  model_->setReading(0, 0, "9.9");
  const QString notes = noteWords(*model_).join('\n');
  EXPECT_TRUE(notes.contains("5")) << toText(notes);       // five readings are asked for
  EXPECT_TRUE(notes.contains("36 N·m")) << toText(notes);  // a set-point nobody took
  EXPECT_TRUE(notes.contains("reproducibility")) << toText(notes);
}

TEST_F(BenchModelTest, wordsCountTheReadingsOutside) {
  typeAll(1.0);
  EXPECT_EQ(verdictWords(*model_->result(), DecisionRule::Simple), QStringLiteral("all 15 readings lie within ±4 %"));
  model_->setReading(0, 0, "12");
  EXPECT_EQ(verdictWords(*model_->result(), DecisionRule::Simple), QStringLiteral("1 of 15 readings outside ±4 %"));
}

TEST_F(BenchModelTest, aToolThatIsNotThereIsRefusedAndNothingChanges) {
  model_->setReading(0, 0, "9.9");
  EXPECT_FALSE(model_->pickTool("W99"));
  EXPECT_EQ(model_->tool()->id, "W06");
  EXPECT_EQ(model_->draft().points[0].readings[0], "9.9");
}

}  // namespace
}  // namespace steadyturn
