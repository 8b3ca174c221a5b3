// Rows of tightenings.
#include <gmock/gmock.h>

#include "transfer_fixture.h"

namespace steadyturn {
namespace {

using testing::SizeIs;

class TighteningRows : public TransferTest {
 protected:
  Shop shop_ = smallShop();
  static constexpr const char* header = "job,vehicle,date,fastener,tool,setting,unit,seat_checked,by\n";
  static constexpr const char* row = "J1,bus 4,2026-01-31,F-2,TW-1,90,N.m,yes,ann\n";
};

TEST_F(TighteningRows, MayBeTheSameWithinAFileForWheelsHaveManyNuts) {
  EXPECT_EQ(imported(shop_, TableKind::Tightenings, std::string(header) + row + row + row).records, 3);
  EXPECT_THAT(*shop_.tighteningsOfJob("J1"), SizeIs(3));
}

TEST_F(TighteningRows, AreRefusedWhereTheShopHasTheSameAlready) {
  imported(shop_, TableKind::Tightenings, std::string(header) + row);
  const std::string other = "J1,bus 4,2026-01-31,F-2,TW-1,90.0,N.m,yes,ann\n";
  const Problems problems = refused(shop_, TableKind::Tightenings, std::string(header) + other + row);
  ASSERT_THAT(problems, SizeIs(1));
  EXPECT_EQ(problems[0].kind, ProblemKind::Conflict);
  EXPECT_EQ(problems[0].line, 3);
  EXPECT_THAT(*shop_.tighteningsOfJob("J1"), SizeIs(1));
}

TEST_F(TighteningRows, AreKnownAgainAfterTheFastenerWasRevised) {
  imported(shop_, TableKind::Tightenings, std::string(header) + row);
  Fastener revised = *shop_.fastener("F-2");
  revised.target = 95;
  ASSERT_TRUE(shop_.reviseFastener(revised, "new data of the vehicle's maker"));
  EXPECT_THAT(
      refused(shop_, TableKind::Tightenings, std::string(header) + row + "J2,,2026-02-01,F-2,TW-1,95,N.m,,\n"),
      SizeIs(1));
}

TEST_F(TighteningRows, OfAKnownJobKeepToItsVehicle) {
  imported(shop_, TableKind::Tightenings, std::string(header) + row);
  const Problems problems =
      refused(shop_, TableKind::Tightenings, std::string(header) + "J1,bus 5,2026-02-01,F-2,TW-1,90,N.m,no,ann\n");
  ASSERT_THAT(problems, SizeIs(1));
  EXPECT_EQ(problems[0].field, "vehicle");
  EXPECT_EQ(problems[0].line, 2);
}

}  // namespace
}  // namespace steadyturn
