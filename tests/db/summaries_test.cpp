#include "sample_records.h"
#include "shop_fixture.h"

namespace steadyturn {
namespace {

class Summaries : public ShopTest {
 protected:
  void SetUp() override {
    ShopTest::SetUp();
    write([](OpenShop& to) {
      to.tools.add(fullTool(), stamp);
      to.tools.add(bareTool(), stamp);
      to.references.add(fullReference(), stamp);
    });
  }
  std::int64_t add(Check check, Date date, Phase phase) {
    check.date = date;
    check.phase = phase;
    std::int64_t id = 0;
    write([&](OpenShop& to) { id = to.checks.add(check, stamp); });
    return id;
  }
};

TEST_F(Summaries, CarryWhatDriftNeeds) {
  const auto id = add(fullCheck(), day(2026, 2, 28), Phase::AsLeft);
  const auto summaries = shop().checks.summaries("TW-07");
  ASSERT_EQ(summaries.size(), 2U);
  const auto& second = summaries[1];
  EXPECT_EQ(second.check, id);
  EXPECT_EQ(second.tool, "TW-07");
  EXPECT_EQ(second.date, day(2026, 2, 28));
  EXPECT_EQ(second.phase, Phase::AsLeft);
  EXPECT_EQ(second.target, (StatedTorque{150, Unit::PoundForceFoot}));
  EXPECT_EQ(second.readings, 2);
  EXPECT_EQ(second.meanDeviation, 1.0 / 3);
  EXPECT_EQ(second.repeatability, 0.9);
  EXPECT_EQ(second.standardUncertainty, 0.6);
  EXPECT_NEAR(second.referenceStandardUncertainty, 0.19801980198, 1e-11);  // 0.4 / 2.02
  EXPECT_EQ(second.verdict, Verdict::ConditionalPass);
  EXPECT_EQ(summaries[0].readings, 3);
}

TEST_F(Summaries, ComeByDateThenAsFoundFirst) {
  const auto third = add(bareCheck(), day(2025, 1, 1), Phase::AsLeft);
  const auto second = add(bareCheck(), day(2025, 1, 1), Phase::AsFound);
  const auto first = add(bareCheck(), day(2024, 1, 1), Phase::AsLeft);
  std::vector<std::int64_t> order;
  for (const auto& summary : shop().checks.summaries("TW-01")) order.push_back(summary.check);
  EXPECT_EQ(order, (std::vector{first, second, third}));
  EXPECT_FALSE(shop().checks.summaries("TW-01")[0].repeatability);
}

TEST_F(Summaries, OfAllToolsLieToolByTool) {
  add(fullCheck(), day(2020, 1, 1), Phase::AsFound);
  add(bareCheck(), day(2025, 1, 1), Phase::AsFound);
  add(fullCheck(), day(2021, 1, 1), Phase::AsFound);
  std::vector<std::string> tools;
  for (const auto& summary : shop().checks.allSummaries()) tools.push_back(summary.tool);
  EXPECT_EQ(tools, (std::vector<std::string>{"TW-01", "TW-07", "TW-07", "TW-07", "TW-07"}));
}

TEST_F(Summaries, LeaveOutWhatWasCorrected) {
  auto correction = bareCheck();
  correction.corrects = add(bareCheck(), day(2025, 1, 1), Phase::AsFound);
  const auto id = add(correction, day(2025, 1, 2), Phase::AsFound);
  ASSERT_EQ(shop().checks.summaries("TW-01").size(), 1U);
  EXPECT_EQ(shop().checks.summaries("TW-01")[0].check, id);
  EXPECT_EQ(shop().checks.allSummaries().size(), 1U);
}

// One tool's history must not cost more as the shop grows: the engine's own plan has to search, not scan, and not
// sort.
TEST_F(Summaries, OneToolsHistoryIsOneRangeOfAnIndex) {
  if (hasTestServer()) GTEST_SKIP() << "PostgreSQL plans by the tables' sizes, and these are empty";
  Statement plan(shop().database,
                 "EXPLAIN QUERY PLAN SELECT r.id FROM check_record r JOIN check_point p ON p.check_id = r.id "
                 "WHERE NOT EXISTS (SELECT 1 FROM check_record c WHERE c.corrects = r.id) AND r.tool = ? "
                 "ORDER BY r.tool, r.date, r.phase, r.id, p.position");
  plan.run("TW-01");
  std::string text;
  while (plan.next()) text += plan.text(3) + "\n";
  EXPECT_NE(text.find("check_record_by_tool (tool=?)"), std::string::npos) << text;
  EXPECT_EQ(text.find("SCAN"), std::string::npos) << text;
  EXPECT_EQ(text.find("TEMP B-TREE"), std::string::npos) << text;
}

}  // namespace
}  // namespace steadyturn
