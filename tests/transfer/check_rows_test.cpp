// Rows of a check file become checks.
#include <fmt/core.h>
#include <gmock/gmock.h>

#include "transfer_fixture.h"

namespace steadyturn {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

class CheckRows : public TransferTest {
 protected:
  Shop shop_ = smallShop();
  static constexpr const char* header = "tool,date,phase,target,reading,unit,reference,by\n";
};

// Recomputed with an independent program (Python) from the definitions: X = 100 N·m and readings 101.2, 100.8, 101.0,
// 101.4, 100.9 give deviations (X − x)/x of mean −1.048433 % and standard deviation s = 0.235606 %; with a reference
// of 0.4 % (k = 2) and 1 N·m a graduation w = √(0.2² + (0.5/√3)² + s²/5) = 0.366654 % (ISO 6789-2:2017, from memory).
TEST_F(CheckRows, AreEvaluatedAsARecordedCheckIs) {
  std::string bytes = header;
  for (const char* reading : {"101.2", "100.8", "101.0", "101.4", "100.9"}) {
    bytes += std::string("TW-1,2026-01-31,as_found,100,") + reading + ",N.m,R1,bench\n";
  }
  const ImportReport report = imported(shop_, TableKind::Checks, bytes);
  EXPECT_EQ(report.rows, 5);
  EXPECT_EQ(report.records, 1);
  const auto checks = shop_.checksOf("TW-1");
  ASSERT_THAT(*checks, SizeIs(1));
  const CheckPoint& point = checks->front().points.at(0);
  EXPECT_NEAR(point.meanDeviation, -1.048433, 5e-7);
  EXPECT_NEAR(point.repeatability.value(), 0.235606, 5e-7);
  EXPECT_NEAR(point.standardUncertainty, 0.366654, 5e-7);
  EXPECT_EQ(point.verdict, Verdict::Pass);
  EXPECT_THAT(point.readings, ElementsAre("101.2", "100.8", "101.0", "101.4", "100.9"));
  EXPECT_EQ(checks->front().by, "bench");
  EXPECT_EQ(checks->front().reference, "R1");
}

TEST_F(CheckRows, NeedNotStandTogether) {
  const ImportReport report = imported(shop_, TableKind::Checks,
                                       std::string(header) +
                                           "TW-1,2026-01-31,as_found,60,60.1,N.m,,\n"
                                           "TW-2,2026-01-31,as_found,20,20.2,lbf.ft,R1,\n"
                                           "TW-1,2026-01-31,as_left,60,59.9,N.m,,\n"
                                           "TW-1,2026-01-31,as_found,20,20.1,N.m,,\n"
                                           "TW-1,2026-01-31,as_found,60.0,60.2,Nm,,\n"
                                           "TW-2,2026-01-31,as_found,20,20.3,lbf.ft,R1,\n");
  EXPECT_EQ(report.records, 3);
  const auto checks = shop_.checksOf("TW-1");
  ASSERT_THAT(*checks, SizeIs(2));
  const Check& found = checks->front();
  EXPECT_EQ(found.phase, Phase::AsFound);
  ASSERT_THAT(found.points, SizeIs(2));
  EXPECT_EQ(found.points[0].target.value, 60);
  EXPECT_THAT(found.points[0].readings, ElementsAre("60.1", "60.2"));
  EXPECT_THAT(found.points[1].readings, ElementsAre("20.1"));
  EXPECT_THAT(shop_.checksOf("TW-2")->front().points[0].readings, ElementsAre("20.2", "20.3"));
}

TEST_F(CheckRows, OfOneCheckAgreeInUnitReferenceAndName) {
  const std::string first = std::string(header) + "TW-1,2026-01-31,as_found,60,60.1,N.m,R1,ann\n";
  const auto only = [&](const std::string& second) {
    const Problems problems = refused(shop_, TableKind::Checks, first + second);
    EXPECT_THAT(problems, SizeIs(1));
    EXPECT_EQ(problems.at(0).line, 3);
    EXPECT_THAT(problems.at(0).accepted, HasSubstr("line 2"));
    return problems.at(0).field;
  };
  EXPECT_EQ(only("TW-1,2026-01-31,as_found,60,44.3,lbf.ft,R1,ann\n"), "unit");
  EXPECT_EQ(only("TW-1,2026-01-31,as_found,60,60.2,N.m,,ann\n"), "reference");
  EXPECT_EQ(only("TW-1,2026-01-31,as_found,60,60.2,N.m,R1,ben\n"), "by");
  EXPECT_TRUE(shop_.checksOf("TW-1")->empty());
}

TEST_F(CheckRows, TellEachBadRowAlsoWhereTheyRepeatTheOneBefore) {
  const Problems problems = refused(shop_, TableKind::Checks,
                                    std::string(header) +
                                        "TW-9,2026-01-31,as_found,60,60.1,N.m,,\n"
                                        "TW-9,2026-01-31,as_found,60,60.1,N.m,,\n"
                                        "TW-1,2026-01-31,as_found,60,6o,N.m,,\n"
                                        "TW-1,2026-01-31,as_found,60,6o,N.m,,\n"
                                        "TW-1,2026-01-31,as_found,60,60,N.m,,\n");
  ASSERT_THAT(problems, SizeIs(4));
  for (std::size_t i = 0; i < 4; ++i) EXPECT_EQ(problems[i].line, i + 2);
}

TEST_F(CheckRows, AreRefusedWhereTheShopHasTheCheck) {
  imported(shop_, TableKind::Checks, std::string(header) + "TW-1,2026-01-31,as_found,60,60.1,N.m,,\n");
  const Problems problems = refused(shop_, TableKind::Checks,
                                    std::string(header) +
                                        "TW-1,2026-01-30,as_found,60,60.1,N.m,,\n"
                                        "TW-1,2026-01-31,as_found,60,60.1,N.m,,\n"
                                        "TW-1,2026-01-31,as_found,60,60.2,N.m,,\n");
  ASSERT_THAT(problems, SizeIs(1));
  EXPECT_EQ(problems[0].kind, ProblemKind::Conflict);
  EXPECT_EQ(problems[0].line, 3);
  EXPECT_THAT(*shop_.checksOf("TW-1"), SizeIs(1));
}

TEST_F(CheckRows, MayHaveManySetPointsButNotAnyNumber) {
  std::string bytes = header;
  for (int i = 0; i < 101; ++i) bytes += fmt::format("TW-1,2026-01-31,as_found,{},50,N.m,,\n", 20 + 0.5 * i);
  const Problems problems = refused(shop_, TableKind::Checks, bytes);
  ASSERT_THAT(problems, SizeIs(1));
  EXPECT_EQ(problems[0].line, 102);
  EXPECT_EQ(problems[0].field, "target");
}

TEST_F(CheckRows, TakeTheNameOfWhoImportsWhereTheyNameNobody) {
  imported(shop_, TableKind::Checks, std::string(header) + "TW-1,2026-01-31,as_found,60,60.1,N.m,,\n",
           {.decimalComma = false, .again = false, .by = "lead"});
  EXPECT_EQ(shop_.checksOf("TW-1")->front().by, "lead");
}

}  // namespace
}  // namespace steadyturn
