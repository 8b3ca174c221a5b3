// Rows of tools, references and fasteners.
#include <fmt/core.h>
#include <gmock/gmock.h>

#include "transfer_fixture.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;
using testing::SizeIs;

class RegisterRows : public TransferTest {};

TEST_F(RegisterRows, MayHaveColumnsInAnyOrderAndLeaveOptionalOnesOut) {
  Shop shop = newShop();
  imported(shop, TableKind::Tools, "unit;max;class;type;tool;min\nft-lb;80.5;b;1;\xC3\x84-7;\n");
  const auto tool = shop.tool("\xC3\x84-7");
  ASSERT_TRUE(tool);
  EXPECT_EQ(tool->kind, (ToolKind{ToolType::Indicating, ToolClass::B}));
  EXPECT_EQ(tool->unit, Unit::PoundForceFoot);
  EXPECT_EQ(tool->maximum, 80.5);
  EXPECT_EQ(tool->minimum, std::nullopt);
  EXPECT_EQ(tool->status, ToolStatus::InService);
}

TEST_F(RegisterRows, TellWhereAMarkIsTaken) {
  Shop shop = smallShop();
  const Problems problems =
      refused(shop, TableKind::Tools, "tool,type,class,max,unit\nTW-1,II,A,10,N.m\nT9,II,A,10,N.m\nT9,II,A,10,N.m\n");
  ASSERT_THAT(problems, SizeIs(2));
  EXPECT_EQ(problems[0].kind, ProblemKind::Conflict);
  EXPECT_THAT(problems[0].accepted, HasSubstr("the shop has it"));
  EXPECT_EQ(problems[1].line, 4);
  EXPECT_THAT(problems[1].accepted, HasSubstr("line 3"));
}

// One mark, spelled with a composed and a decomposed ä (Unicode, canonical equivalence): the shop keeps one form.
TEST_F(RegisterRows, KnowAMarkHoweverItsAccentsAreSpelled) {
  Shop shop = newShop();
  EXPECT_THAT(
      refused(shop, TableKind::Tools, "tool,type,class,max,unit\n\xC3\xA4,II,A,10,N.m\na\xCC\x88,II,A,10,N.m\n"),
      SizeIs(1));
}

TEST_F(RegisterRows, OfAPlasticPartWithoutALimitAreTakenInWithAWarning) {
  Shop shop = newShop();
  const ImportReport report = imported(shop, TableKind::Fasteners,
                                       "fastener,component,target,unit,part_material,part_limit\n"
                                       "F1,housing,18,N.m,plastic,21\n"
                                       "F2,housing,18,N.m,plastic,\n"
                                       "F3,housing,18,N.m,aluminium,\n");
  EXPECT_EQ(report.records, 3);
  ASSERT_THAT(report.warnings, SizeIs(1));
  EXPECT_THAT(report.warnings[0], HasSubstr("line 3"));
  EXPECT_THAT(report.warnings[0], HasSubstr("limit"));
}

// M8 8.8 takes 24.6 N·m at friction 0.12 (VDI 2230 Part 1): 20 N·m is usual, 20 lbf·in is a tenth of it.
TEST_F(RegisterRows, QuestionATorqueThatSuitsAnotherUnit) {
  Shop shop = newShop();
  const ImportReport report = imported(shop, TableKind::Fasteners,
                                       "fastener,component,thread,property_class,target,unit,part_material\n"
                                       "F1,bracket,M8,8.8,20,N.m,steel\n"
                                       "F2,bracket,M8,8.8,20,lbf.in,steel\n");
  EXPECT_EQ(report.records, 2);
  ASSERT_THAT(report.warnings, SizeIs(1));
  EXPECT_THAT(report.warnings[0], HasSubstr("line 3: F2 (bracket): 20 lbf·in on M8? 20 N·m would fit."));
}

TEST_F(RegisterRows, WarnAtMostAHundredTimes) {
  Shop shop = newShop();
  std::string bytes = "fastener,component,target,unit,part_material\n";
  for (int i = 0; i < 120; ++i) bytes += fmt::format("F{},housing,18,N.m,plastic\n", i);
  const ImportReport report = imported(shop, TableKind::Fasteners, bytes);
  EXPECT_EQ(report.records, 120);
  ASSERT_THAT(report.warnings, SizeIs(101));
  EXPECT_EQ(report.warnings.back(), "20 warnings more");
}

}  // namespace
}  // namespace steadyturn
