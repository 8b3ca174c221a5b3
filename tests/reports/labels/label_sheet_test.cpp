#include "label_sheet.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace steadyturn {
namespace {

TEST(LabelSheet, SharesOutWhatMarginsAndGapsLeave) {
  // By hand: (210 − 10 − 20 − 2·3) / 3 = 58; (297 − 15 − 12 − 4·2.5) / 5 = 52.
  const LabelSheet sheet{.pageWidth = 210,
                         .pageHeight = 297,
                         .left = 10,
                         .top = 15,
                         .right = 20,
                         .bottom = 12,
                         .columns = 3,
                         .rows = 5,
                         .columnGap = 3,
                         .rowGap = 2.5};
  const auto first = sheet.place(0), fifth = sheet.place(4), last = sheet.place(14);
  EXPECT_DOUBLE_EQ(first.width, 58);
  EXPECT_DOUBLE_EQ(first.height, 52);
  EXPECT_DOUBLE_EQ(first.left, 10);
  EXPECT_DOUBLE_EQ(first.top, 15);
  EXPECT_DOUBLE_EQ(fifth.left, 10 + 58 + 3);
  EXPECT_DOUBLE_EQ(fifth.top, 15 + 52 + 2.5);
  EXPECT_DOUBLE_EQ(last.left + last.width, 210 - 20);
  EXPECT_DOUBLE_EQ(last.top + last.height, 297 - 12);
}

TEST(LabelSheet, OwnSheetsCanBePrinted) {
  EXPECT_TRUE(checkSheet(singleLabel()));
  EXPECT_TRUE(checkSheet(a4Labels()));
  EXPECT_EQ(a4Labels().places(), 24);
}

TEST(LabelSheet, EveryFaultIsNamedAtOnce) {
  const auto checked = checkSheet({.pageWidth = 0,
                                   .pageHeight = std::numeric_limits<double>::quiet_NaN(),
                                   .left = -1,
                                   .columns = 0,
                                   .rows = 2000,
                                   .rowGap = std::numeric_limits<double>::infinity()});
  ASSERT_FALSE(checked);
  std::vector<std::string> fields;
  for (const auto& problem : checked.error()) fields.push_back(problem.field);
  EXPECT_EQ(fields, (std::vector<std::string>{"sheet.pageWidth", "sheet.pageHeight", "sheet.left", "sheet.rowGap",
                                              "sheet.columns", "sheet.rows"}));
}

TEST(LabelSheet, RefusesLabelsTooSmallAndPlacesThatAreNotThere) {
  auto narrow = a4Labels();
  narrow.columns = 6;
  ASSERT_FALSE(checkSheet(narrow));
  EXPECT_EQ(checkSheet(narrow).error().front().field, "sheet.columns");
  auto flat = a4Labels();
  flat.rows = 30;
  ASSERT_FALSE(checkSheet(flat));
  EXPECT_EQ(checkSheet(flat).error().front().field, "sheet.rows");
  for (const int skip : {-1, 24}) {
    auto sheet = a4Labels();
    sheet.skip = skip;
    ASSERT_FALSE(checkSheet(sheet)) << skip;
    EXPECT_EQ(checkSheet(sheet).error().front().accepted, "0 to 23");
  }
}

}  // namespace
}  // namespace steadyturn
