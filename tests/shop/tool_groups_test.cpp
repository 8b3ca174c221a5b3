// Tools that the shop itself says are alike lend each other their drift, whatever their makers and maxima.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "shop_fleet.h"
#include "shop_proof.h"
#include "wrench_shop.h"

namespace steadyturn {
namespace {

using test::on;
using testing::HasSubstr;
using testing::Not;

class ToolGroups : public test::WrenchShop {
 protected:
  // Two sorts of tools of one kind: five hardly drift, five drift by about 1.5 % a year.
  void SetUp() override {
    WrenchShop::SetUp();
    for (int tool = 0; tool < 10; ++tool) {
      const std::string id = "W" + std::to_string(tool);
      const double slope = (tool < 5 ? 0.05 : 1.5) + 0.02 * tool;
      addTool(id, "maker " + id);  // no two alike by themselves
      for (int year = 0; year < 4; ++year) {
        const double scatter = 0.1 * std::sin(5.0 * tool + 2.0 * year);
        check(id, on("2021-03-01") + std::chrono::days(365 * year + 9 * tool), slope * year + scatter - 2);
      }
    }
    addTool("NEW", "maker NEW");
    check("NEW", on("2024-06-01"), 0);
  }
  FleetWord wordOfNew() { return shop.drift("NEW", on("2025-06-01"))->series.at(0).fleet; }
};

TEST_F(ToolGroups, ANamedGroupLendsItsOwnDrift) {
  const auto before = wordOfNew();
  EXPECT_THAT(before.group, HasSubstr("type II class A"));
  EXPECT_EQ(before.toolsThatSpeak, 10U);
  for (int tool = 5; tool < 10; ++tool) {
    ASSERT_TRUE(nameToolGroup(shop, "W" + std::to_string(tool), "wheel wrenches"));
  }
  ASSERT_TRUE(nameToolGroup(shop, "NEW", "wheel wrenches"));
  const auto after = wordOfNew();
  EXPECT_THAT(after.group, HasSubstr("the shop's group wheel wrenches"));
  EXPECT_EQ(after.toolsThatSpeak, 5U);
  EXPECT_NEAR(after.outlook.slope.slope, 1.64, 0.1);  // the mean of 1.6 to 1.68, and its scatter
  EXPECT_LT(after.outlook.prediction.standardError, before.outlook.prediction.standardError);
  const auto scored = backtestShop(shop, "wheel wrenches", on("2025-06-01"));
  ASSERT_TRUE(scored);
  EXPECT_EQ(scored->groups.size(), 3U);  // one a set-point
}

TEST_F(ToolGroups, AGroupWithoutARecordFallsBackToTheKind) {
  ASSERT_TRUE(nameToolGroup(shop, "NEW", "just bought"));
  const auto word = wordOfNew();
  EXPECT_TRUE(word.estimated);
  EXPECT_THAT(word.group, Not(HasSubstr("just bought")));
}

TEST_F(ToolGroups, AreOnRecordAndTakenBack) {
  const auto before = ledgerHead(shop)->size;
  ASSERT_TRUE(nameToolGroup(shop, "NEW", "wheel wrenches"));
  ASSERT_TRUE(nameToolGroup(shop, "NEW", "wheel wrenches"));  // says nothing new
  EXPECT_EQ(ledgerHead(shop)->size, before + 1);
  EXPECT_EQ(toolGroups(shop)->at("NEW"), "wheel wrenches");
  ASSERT_TRUE(nameToolGroup(shop, "NEW", ""));
  EXPECT_TRUE(toolGroups(shop)->empty());
  EXPECT_TRUE(verifyShop(shop)->intact());
  EXPECT_FALSE(nameToolGroup(shop, "W99", "wheel wrenches"));
}

}  // namespace
}  // namespace steadyturn
