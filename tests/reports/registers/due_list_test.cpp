#include "due_list.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "demo_work.h"

namespace steadyturn {
namespace {

using test::byDate;
using test::byDrift;
using test::on;
using testing::ElementsAre;
using testing::HasSubstr;

DueListData demoList() {
  return {.shopName = "Depot North",
          .shopPlace = "Quay Road 4, Northhaven",
          .today = on("2026-03-11"),
          .work = {byDate("W09", "2026-05-01"), byDate("W04", "2026-03-20"), byDrift("W03", "2026-03-12"),
                   byDate("W02", "2026-03-01"), byDate("W01", "2026-02-01"), test::neverChecked("W05"),
                   byDate("W08", "2026-04-02")}};
}

std::vector<std::string> toolsUnder(const ReportDocument& report, const std::string& heading) {
  for (const auto& block : report.blocks) {
    const auto* table = std::get_if<TableBlock>(&block);
    if (!table || table->heading != heading) continue;
    std::vector<std::string> tools;
    for (const auto& row : table->rows) tools.push_back(row[0]);
    return tools;
  }
  return {"no such table"};
}

std::string paragraphUnder(const ReportDocument& report, const std::string& heading) {
  for (const auto& block : report.blocks) {
    const auto* paragraph = std::get_if<ParagraphBlock>(&block);
    if (paragraph && paragraph->heading == heading) return paragraph->text;
  }
  return "no such paragraph";
}

TEST(DueList, ListsNowThisWeekAndThisMonthTheMostUrgentFirst) {
  const auto report = buildDueList(demoList());
  EXPECT_THAT(toolsUnder(report, "Overdue, failed or never checked"), ElementsAre("W05", "W01", "W02"));
  EXPECT_THAT(toolsUnder(report, "This week, to Sunday 2026-03-15"), ElementsAre("W03"));
  EXPECT_THAT(toolsUnder(report, "This month, to 2026-03-31"), ElementsAre("W04"));
  EXPECT_EQ(paragraphUnder(report, "Later"),
            "2 more tools are due after this month; the first is W08 on 2026-04-02.");
}

TEST(DueList, RowSaysWhyLastCheckAndWhatToCheckAndLeavesRoomToSign) {
  const auto report = buildDueList(demoList());
  for (const auto& block : report.blocks) {
    const auto* table = std::get_if<TableBlock>(&block);
    if (!table) continue;
    for (const auto& row : table->rows) ASSERT_EQ(row.size(), table->columns.size());
    if (table->rows.front()[0] != "W03") continue;
    EXPECT_THAT(table->rows.front(), ElementsAre("W03", "Wheel bay, long handle", "2026-03-12",
                                                 "by drift: at 60 N·m it could be found outside ±4 %", "2025-03-12",
                                                 "20, 60, 100 N·m, 5 readings each", ""));
  }
}

TEST(DueList, SaysNoneWhereNothingIsDue) {
  const auto report =
      buildDueList({.shopName = "Depot North", .shopPlace = {}, .today = on("2026-03-11"), .work = {}});
  EXPECT_EQ(paragraphUnder(report, "Overdue, failed or never checked"), "None.");
  EXPECT_EQ(paragraphUnder(report, "This week, to Sunday 2026-03-15"), "None.");
  EXPECT_EQ(paragraphUnder(report, "This month, to 2026-03-31"), "None.");
  EXPECT_EQ(report.issuer, "Depot North");
}

TEST(DueList, LeavesTheMonthOutWhereTheWeekReachesBeyondIt) {
  const auto report =
      buildDueList({.shopName = "Depot North", .shopPlace = {}, .today = on("2026-03-31"), .work = {}});
  EXPECT_EQ(paragraphUnder(report, "This week, to Sunday 2026-04-05"), "None.");
  EXPECT_EQ(paragraphUnder(report, "This month, to 2026-03-31"), "no such paragraph");
}

TEST(DueList, SaysWhatItsDatesGoBy) {
  auto data = demoList();
  data.confidence = 0.9;
  const auto words = paragraphUnder(buildDueList(data), "How to read this list");
  EXPECT_THAT(words, HasSubstr("90 % prediction interval"));
  EXPECT_THAT(words, HasSubstr("ISO 6789-1:2017"));
  EXPECT_THAT(words, HasSubstr("not used until"));
}

}  // namespace
}  // namespace steadyturn
