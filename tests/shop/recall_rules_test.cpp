// A recall from its failed check to its closing: each tightening in doubt is decided, the closing waits for all, and
// what was decided can be proven.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "shop_proof.h"
#include "wrench_shop.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;
using testing::SizeIs;

constexpr Date in2026(unsigned m, unsigned d) {
  return std::chrono::sys_days(std::chrono::year(2026) / std::chrono::month(m) / std::chrono::day(d));
}

class RecallRules : public test::WrenchShop {
 protected:
  void SetUp() override {
    WrenchShop::SetUp();
    addTool("T");
    Fastener plug;
    plug.id = "F";
    plug.component = "drain plug";
    plug.target = 40;
    plug.low = 38;
    plug.high = 42;
    ASSERT_TRUE(shop.addFastener(plug));
    check("T", in2026(1, 10), 0);
    for (const auto& [job, date] : {std::pair{"J1", in2026(1, 20)}, std::pair{"J2", in2026(2, 20)}})
      tighten(job, date);
    check("T", in2026(3, 1), 7);
  }
  void tighten(const char* job, Date date) {
    Tightening made;
    made.job = job;
    made.vehicle = "van 3";
    made.date = date;
    made.fastener = "F";
    made.tool = "T";
    made.setting = "40";
    made.by = "Sven";
    ASSERT_TRUE(shop.recordTightening(made));
  }
  Problem problemOf(const Result<RecallList>& result) {
    return result ? Problem{.field = "none"} : result.error().front();
  }
};

TEST_F(RecallRules, EachTighteningIsDecidedAndThenTheRecallIsClosed) {
  auto list = shop.recall("T").value();
  ASSERT_THAT(list.tightenings, SizeIs(2));
  EXPECT_EQ(list.undecided(), 2);
  const auto worst = list.tightenings[0].tightening.id;
  const auto other = list.tightenings[1].tightening.id;
  EXPECT_EQ(list.tightenings[0].tightening.job, "J2");  // nearer to the failed check

  EXPECT_THAT(problemOf(shop.closeRecall("T", "Mara", "")).found, HasSubstr("2 of 2"));
  list = shop.decideRecall("T", {.tightening = worst, .action = RecallAction::Retorque, .reason = {}, .by = "Mara"})
             .value();
  EXPECT_EQ(list.undecided(), 1);
  EXPECT_THAT(problemOf(shop.closeRecall("T", "Mara", "")).found, HasSubstr("1 of 2"));
  list = shop.decideRecall("T", {.tightening = other,
                                 .action = RecallAction::Accept,
                                 .reason = "seen and re-checked with another wrench",
                                 .by = "Mara"})
             .value();
  EXPECT_EQ(list.undecided(), 0);
  list = shop.closeRecall("T", "Mara", "both vans were here").value();
  ASSERT_TRUE(list.closing);
  EXPECT_EQ(list.closing->by, "Mara");
  EXPECT_EQ(list.closing->tightenings, 2);

  EXPECT_EQ(problemOf(shop.decideRecall(
                          "T", {.tightening = worst, .action = RecallAction::ReplacePart, .reason = {}, .by = {}}))
                .kind,
            ProblemKind::Conflict);
  EXPECT_EQ(problemOf(shop.closeRecall("T", "Mara", "")).kind, ProblemKind::Conflict);
  const auto verified = verifyShop(shop);
  ASSERT_TRUE(verified);
  EXPECT_TRUE(verified->intact());
}

TEST_F(RecallRules, ALaterDecisionCountsAndTheEarlierStaysOnRecord) {
  const auto id = shop.recall("T")->tightenings[0].tightening.id;
  const auto before = ledgerHead(shop)->size;
  ASSERT_TRUE(
      shop.decideRecall("T", {.tightening = id, .action = RecallAction::Accept, .reason = "looked at", .by = {}}));
  const auto list =
      shop.decideRecall("T", {.tightening = id, .action = RecallAction::ReplacePart, .reason = "cracked", .by = {}})
          .value();
  EXPECT_EQ(list.tightenings[0].decision->action, RecallAction::ReplacePart);
  EXPECT_EQ(ledgerHead(shop)->size, before + 2);
}

TEST_F(RecallRules, AcceptingWantsAReason) {
  const auto id = shop.recall("T")->tightenings[0].tightening.id;
  EXPECT_EQ(
      problemOf(shop.decideRecall("T", {.tightening = id, .action = RecallAction::Accept, .reason = {}, .by = {}}))
          .field,
      "reason");
  EXPECT_EQ(shop.recall("T")->undecided(), 2);
}

TEST_F(RecallRules, OnlyWhatIsInDoubtIsDecided) {
  EXPECT_EQ(problemOf(shop.decideRecall(
                          "T", {.tightening = 4711, .action = RecallAction::Retorque, .reason = {}, .by = {}}))
                .kind,
            ProblemKind::NotFound);
}

TEST_F(RecallRules, TheReportNamesEveryVehicleAndWhatIsNotDecided) {
  const auto report = buildRecallReport(shop.recallReport("T").value());
  std::vector<std::string> cells;
  for (const auto& block : report.blocks) {
    if (const auto* table = std::get_if<TableBlock>(&block)) {
      for (const auto& row : table->rows) cells.insert(cells.end(), row.begin(), row.end());
    }
  }
  EXPECT_THAT(cells, testing::Contains("van 3"));
  EXPECT_THAT(cells, testing::Contains("NOT DECIDED").Times(2));
}

}  // namespace
}  // namespace steadyturn
