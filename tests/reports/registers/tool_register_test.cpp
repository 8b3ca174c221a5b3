#include "tool_register.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "demo_register.h"

namespace steadyturn {
namespace {

using test::demoEntry;
using testing::ElementsAre;

ReportDocument registerOf(std::vector<RegisterEntry> entries) {
  return buildToolRegister({.shopName = "Depot North",
                            .shopPlace = "Northhaven",
                            .today = test::on("2026-03-15"),
                            .entries = std::move(entries)});
}

const std::vector<std::vector<std::string>>& rows(const ReportDocument& report) {
  return std::get<TableBlock>(report.blocks[1]).rows;
}

// ±4 %: ISO 6789-1:2017, Type II class A above 10 N·m (domain table; read in an instrument's instruction sheet).
TEST(ToolRegister, RowHasTheToolsFactsAndItsStandardsLimit) {
  const auto report = registerOf({demoEntry("TW-07", "ready")});
  EXPECT_THAT(rows(report),
              ElementsAre(ElementsAre("TW-07", "Wheel bay, long handle", "Harbourside Tools, HT-20419", "II A",
                                      "20 to 100 N·m", "4", "365", "2025-11-03", "2026-11-03", "ready")));
}

TEST(ToolRegister, OwnLimitIntervalAndReasonGoFirst) {
  auto entry = demoEntry("TW-08", "held");
  entry.tool.limitPercent = 3;
  entry.tool.intervalDays = 180;
  entry.tool.statusReason = "pawl worn";
  entry.tool.minimum.reset();
  entry.tool.serial.clear();
  entry.lastCheck.reset();
  entry.due.reset();
  const auto report = registerOf({entry});
  EXPECT_THAT(rows(report), ElementsAre(ElementsAre("TW-08", "Wheel bay, long handle", "Harbourside Tools", "II A",
                                                    "up to 100 N·m", "3", "180", "none", "", "held: pawl worn")));
}

TEST(ToolRegister, FixedToolHasOneValue) {
  auto entry = demoEntry("TW-09", "ready");
  entry.tool.kind = {ToolType::Setting, ToolClass::B};
  const auto report = registerOf({entry});
  EXPECT_EQ(rows(report)[0][4], "100 N·m, fixed");
}

TEST(ToolRegister, CountsToolsAndStates) {
  const auto report = registerOf({demoEntry("a", "ready"), demoEntry("b", "held"), demoEntry("c", "ready")});
  std::vector<std::string> facts;
  for (const auto& fact : std::get<FactsBlock>(report.blocks[0]).facts) facts.push_back(fact.name + "=" + fact.value);
  EXPECT_THAT(facts, ElementsAre("Tools=3", "of these held=1", "of these ready=2"));
}

TEST(ToolRegister, KeepsTheGivenOrder) {
  const auto report = registerOf({demoEntry("b", "ready"), demoEntry("a", "ready")});
  EXPECT_EQ(rows(report)[0][0], "b");
  EXPECT_EQ(rows(report)[1][0], "a");
}

}  // namespace
}  // namespace steadyturn
