// The shop's rules: what it takes in, what it refuses, and that a refusal leaves nothing behind.
#include "date_of.h"
#include "wrench_shop.h"

namespace steadyturn {
namespace {

class Rules : public test::WrenchShop {
 protected:
  void SetUp() override {
    WrenchShop::SetUp();
    addTool("T");
  }

  static Tool wrench() { return WrenchShop::wrench("T"); }

  static Tightening tightening(Date date, const std::string& setting) {
    Tightening made;
    made.job = "J";
    made.date = date;
    made.fastener = "F";
    made.tool = "T";
    made.setting = setting;
    return made;
  }

  // A check whose every reading lies `percent` off.
  static CheckDraft check(Date date, Phase phase, double percent) {
    auto draft = draftOf("T", date, percent);
    draft.phase = phase;
    return draft;
  }
};

template <typename T>
std::string fieldOf(const Result<T>& result) {
  return result ? "" : result.error().front().field;
}

TEST_F(Rules, AToolIsTakenOnce) {
  const auto again = shop.addTool(wrench());
  ASSERT_FALSE(again);
  EXPECT_EQ(again.error().front().kind, ProblemKind::Conflict);
}

TEST_F(Rules, AMinimumAboveTheMaximumIsRefused) {
  auto tool = wrench();
  tool.id = "U";
  tool.minimum = 120;
  EXPECT_EQ(fieldOf(shop.addTool(tool)), "min");
  EXPECT_FALSE(shop.tool("U"));
}

TEST_F(Rules, ATargetInAWrongUnitIsRefused) {
  auto draft = check(day(2026, 1, 5), Phase::AsFound, 0.5);
  draft.unit = Unit::PoundForceFoot;  // 100 lbf·ft is far above a wrench that ends at 100 N·m
  EXPECT_EQ(fieldOf(shop.recordCheck(draft)), "target");
  EXPECT_TRUE(shop.checksOf("T")->empty());
}

TEST_F(Rules, AReadingWithALetterIsRefused) {
  auto draft = check(day(2026, 1, 5), Phase::AsFound, 0.5);
  draft.points[1].readings[2] = "1O.5";
  EXPECT_EQ(fieldOf(shop.recordCheck(draft)), "reading");
  EXPECT_TRUE(shop.checksOf("T")->empty());
}

TEST_F(Rules, ACheckIsRecordedAsEvaluatedAndOnlyOnce) {
  const auto draft = check(day(2026, 1, 5), Phase::AsFound, 1.0);
  const auto recorded = shop.recordCheck(draft);
  ASSERT_TRUE(recorded);
  EXPECT_EQ(recorded->verdict, Verdict::Pass);
  EXPECT_NEAR(recorded->points[0].meanDeviation, 1.0, 1e-9);
  EXPECT_EQ(shop.check(recorded->id)->points[2].readings, draft.points[2].readings);
  EXPECT_EQ(fieldOf(shop.recordCheck(draft)), "date");
}

TEST_F(Rules, ACorrectionKeepsBothRecords) {
  const auto first = shop.recordCheck(check(day(2026, 1, 5), Phase::AsFound, 6.0)).value();
  EXPECT_FALSE(shop.correctCheck(first.id, check(day(2026, 1, 5), Phase::AsFound, 0.6), ""));
  const auto second = shop.correctCheck(first.id, check(day(2026, 1, 5), Phase::AsFound, 0.6), "point typed wrong");
  ASSERT_TRUE(second);
  EXPECT_EQ(shop.check(first.id)->correctedBy, second->id);
  EXPECT_EQ(shop.checksOf("T")->size(), 2U);
  EXPECT_EQ(shop.drift("T", day(2026, 1, 6))->series[0].points.size(), 1U)
      << "the drift sees the corrected one alone";
  EXPECT_FALSE(shop.correctCheck(first.id, check(day(2026, 1, 5), Phase::AsFound, 0.7), "again"))
      << "correct the newest";
}

TEST_F(Rules, AHeldToolComesBackOnlyWithAPassingCheck) {
  ASSERT_TRUE(shop.recordCheck(check(day(2026, 1, 5), Phase::AsFound, 6.0)));
  ASSERT_TRUE(shop.holdTool("T", "failed"));
  EXPECT_FALSE(shop.releaseTool("T", "hope"));
  ASSERT_TRUE(shop.recordCheck(check(day(2026, 1, 5), Phase::AsLeft, 0.2)));
  EXPECT_TRUE(shop.releaseTool("T", "adjusted and checked"));
  EXPECT_EQ(shop.tool("T")->status, ToolStatus::InService);
}

TEST_F(Rules, ATighteningWithABadWrenchIsRefused) {
  Fastener bolt;
  bolt.id = "F";
  bolt.component = "bolt";
  bolt.target = 50;
  ASSERT_TRUE(shop.addFastener(bolt));
  auto done = tightening(day(2026, 2, 1), "50");
  EXPECT_EQ(fieldOf(shop.recordTightening(done)), "tool") << "never checked";
  ASSERT_TRUE(shop.recordCheck(check(day(2026, 1, 5), Phase::AsFound, 0.4)));
  EXPECT_TRUE(shop.recordTightening(done));
  done.date = day(2027, 3, 1);
  EXPECT_EQ(fieldOf(shop.recordTightening(done)), "tool") << "overdue by then";
  EXPECT_EQ(shop.tighteningsOfJob("J")->size(), 1U);
}

TEST_F(Rules, RecallInterpolatesInTime) {
  Fastener bolt;
  bolt.id = "F";
  bolt.component = "bolt";
  bolt.target = 60;
  bolt.low = 57;
  bolt.high = 63;
  ASSERT_TRUE(shop.addFastener(bolt));
  ASSERT_TRUE(shop.recordCheck(check(day(2026, 1, 1), Phase::AsFound, 0.0)));
  ASSERT_TRUE(shop.recordTightening(tightening(day(2026, 7, 2), "60")));
  ASSERT_TRUE(shop.recordCheck(check(day(2026, 12, 31), Phase::AsFound, 8.0)));
  const auto list = shop.recall("T").value();
  ASSERT_EQ(list.tightenings.size(), 1U);
  // 182 of 364 days after the good check: half of 8 %.
  EXPECT_NEAR(list.tightenings[0].result.onTheDay.deviationPercent, 4.0, 1e-6);
  EXPECT_NEAR(list.tightenings[0].result.worstCase.deviationPercent, 8.0, 1e-6);
  EXPECT_GT(list.tightenings[0].result.worstCase.probabilityBelow,
            list.tightenings[0].result.onTheDay.probabilityBelow);
}

TEST_F(Rules, APlasticPartWithoutALimitIsTakenInWithAWarning) {
  Fastener cover;
  cover.id = "C";
  cover.component = "filter cover";
  cover.partMaterial = "Plastic (moulded)";
  cover.target = 25;
  const auto saved = shop.addFastener(cover);
  ASSERT_TRUE(saved);
  EXPECT_EQ(saved->warnings.size(), 1U);
  cover.id = "D";
  cover.partLimit = 20;  // below the target
  EXPECT_EQ(fieldOf(shop.addFastener(cover)), "part_limit");
}

}  // namespace
}  // namespace steadyturn
