// Rows that are refused: each is told with its line and its column, and nothing of the file is kept.
#include <fmt/core.h>
#include <gmock/gmock.h>

#include "transfer_fixture.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;
using testing::SizeIs;

struct BadCell {
  const char* row;
  const char* field;
  const char* found;
};

class BadRow : public TransferTest {
 protected:
  // A good row in line 2, the bad one in line 3.
  void expectRefused(TableKind kind, const std::string& header, const std::string& good, const BadCell& bad) {
    Shop shop = smallShop();
    const std::string before = exported(shop, kind);
    const Problems problems = refused(shop, kind, header + "\n" + good + "\n" + bad.row + "\n");
    ASSERT_THAT(problems, SizeIs(1)) << bad.row;
    EXPECT_EQ(problems[0].line, 3) << bad.row;
    EXPECT_EQ(problems[0].field, bad.field) << bad.row;
    EXPECT_THAT(problems[0].found, HasSubstr(bad.found)) << bad.row;
    EXPECT_NE(problems[0].accepted, "") << bad.row;
    EXPECT_EQ(exported(shop, kind), before);
  }
};

TEST_F(BadRow, OfTools) {
  for (const BadCell& bad : {BadCell{"T2,II,A,10,100,Nmm,1", "unit", "Nmm"},
                             {"T2,II,A,10,1O.5,N.m,1", "max", "1O.5"},
                             {"T2,II,A,10,NaN,N.m,1", "max", "NaN"},
                             {"T2,II,A,10,inf,N.m,1", "max", "inf"},
                             {"T2,II,A,10,\"100,5\",N.m,1", "max", "100,5"},
                             {"T2,II,A,-10,100,N.m,1", "min", "-10"},
                             {"T2,II,A,100,10,N.m,1", "min", "100"},
                             {"T2,II,A,,-100,N.m,", "max", "-100"},
                             {"T2,II,A,10,,N.m,1", "max", ""},
                             {"T2,II,H,10,100,N.m,1", "class", "H"},
                             {"T2,I,G,10,100,N.m,1", "class", "G"},
                             {"T2,III,A,10,100,N.m,1", "type", "III"},
                             {",II,A,10,100,N.m,1", "tool", ""},
                             {"T1,II,A,10,100,N.m,1", "tool", "T1"},
                             {"TW-1,II,A,10,100,N.m,1", "tool", "TW-1"},
                             {"T2,II,A,10,100,N.m", "resolution", "6 cells"},
                             {"T2,II,A,10,100,N.m,1,", "", "8 cells"}}) {
    expectRefused(TableKind::Tools, "tool,type,class,min,max,unit,resolution", "T1,II,A,10,100,N.m,1", bad);
  }
}

TEST_F(BadRow, OfReferences) {
  for (const BadCell& bad : {BadCell{"R2,2026-02-30,0.4", "calibrated", "2026-02-30"},
                             {"R2,01.02.2026,0.4", "calibrated", "01.02.2026"},
                             {"R2,,0", "expanded_uncertainty_percent", "0"},
                             {"R1,,0.4", "reference", "R1"}}) {
    expectRefused(TableKind::References, "reference,calibrated,expanded_uncertainty_percent", "R9,2026-02-28,0.4",
                  bad);
  }
}

TEST_F(BadRow, OfFasteners) {
  for (const BadCell& bad : {BadCell{"X,plug,36,30,35,,N.m,no", "high", "35"},
                             {"X,plug,29,30,35,,N.m,no", "low", "30"},
                             {"X,plug,30,,,25,N.m,no", "part_limit", "25"},
                             {"X,plug,0,,,,N.m,no", "target", "0"},
                             {"X,,30,,,,N.m,no", "component", ""},
                             {"X,plug,30,,,,N.m,perhaps", "renew", "perhaps"},
                             {"F-1,plug,30,,,,N.m,no", "fastener", "F-1"}}) {
    expectRefused(TableKind::Fasteners, "fastener,component,target,low,high,part_limit,unit,renew",
                  "F-9,plug,30,25,35,40,N.m,yes", bad);
  }
}

TEST_F(BadRow, OfChecks) {
  for (const BadCell& bad : {BadCell{"TW-9,2026-01-31,as_found,20,20.1,N.m,R1", "tool", "TW-9"},
                             {"TW-1,2026-02-30,as_found,20,20.1,N.m,R1", "date", "2026-02-30"},
                             {"TW-1,2026-01-31,found,20,20.1,N.m,R1", "phase", "found"},
                             {"TW-1,2026-01-31,as_found,20,20.1.,N.m,R1", "reading", "20.1."},
                             {"TW-1,2026-01-31,as_found,20,-20.1,N.m,R1", "reading", "-20.1"},
                             {"TW-1,2026-01-31,as_found,20,0,N.m,R1", "reading", "0"},
                             {"TW-1,2026-01-31,as_found,20,,N.m,R1", "reading", ""},
                             {"TW-1,2026-01-31,as_found,0,20.1,N.m,R1", "target", "0"},
                             {"TW-1,2026-01-31,as_found,20,20.1,bar,R1", "unit", "bar"},
                             {"TW-1,2026-01-31,as_found,20,20.1,N.m,R7", "reference", "R7"},
                             // Beyond the tool's range: usually a wrong unit.
                             {"TW-1,2026-01-31,as_found,500,501,N.m,R1", "target", "500"},
                             {"TW-1,2026-01-31,as_found,100,101,lbf.ft,R1", "target", "100"}}) {
    expectRefused(TableKind::Checks, "tool,date,phase,target,reading,unit,reference",
                  "TW-1,2025-01-31,as_found,20,20.1,N.m,R1", bad);
  }
}

TEST_F(BadRow, OfTightenings) {
  for (const BadCell& bad : {BadCell{"J1,V1,2026-01-31,F-9,TW-1,35,N.m,yes", "fastener", "F-9"},
                             {"J1,V1,2026-01-31,F-1,TW-9,35,N.m,yes", "tool", "TW-9"},
                             {"J1,V1,2026-01-31,F-1,TW-1,35 Nm,N.m,yes", "setting", "35 Nm"},
                             {"J1,V1,2026-01-31,F-1,TW-1,-35,N.m,yes", "setting", "-35"},
                             {"J1,V1,2026-01-31,F-1,TW-1,35,,yes", "unit", ""},
                             {"J1,V1,2026-01-31,F-1,TW-1,35,N.m,maybe", "seat_checked", "maybe"},
                             {"J1,V1,2026-13-31,F-1,TW-1,35,N.m,yes", "date", "2026-13-31"},
                             {",V1,2026-01-31,F-1,TW-1,35,N.m,yes", "job", ""},
                             {"J1,V2,2026-01-31,F-1,TW-1,35,N.m,yes", "vehicle", "V2"}}) {
    expectRefused(TableKind::Tightenings, "job,vehicle,date,fastener,tool,setting,unit,seat_checked",
                  "J1,V1,2026-01-31,F-1,TW-1,35,N.m,yes", bad);
  }
}

TEST_F(BadRow, ListsTheFirst100ProblemsAndCountsTheRest) {
  Shop shop = newShop();
  std::string bytes = "tool,type,class,max,unit\n";
  for (int i = 0; i < 250; ++i) bytes += fmt::format("T{},II,A,ten,N.m\n", i);
  const Problems problems = refused(shop, TableKind::Tools, bytes);
  ASSERT_THAT(problems, SizeIs(101));
  EXPECT_EQ(problems[0].line, 2);
  EXPECT_EQ(problems[99].line, 101);
  EXPECT_EQ(problems[100].line, std::nullopt);
  EXPECT_EQ(problems[100].found, "150 problems more");
}

TEST_F(BadRow, HintsAtDecimalCommas) {
  Shop shop = newShop();
  EXPECT_THAT(refused(shop, TableKind::Tools, "tool;type;class;max;unit\nT;II;A;12,5;N.m\n")[0].accepted,
              HasSubstr("decimal commas"));
}

}  // namespace
}  // namespace steadyturn
