// How cells are read: decimal commas, blanks, formula guards, line breaks.
#include <gmock/gmock.h>

#include "transfer_fixture.h"

namespace steadyturn {
namespace {

using testing::ElementsAre;
using testing::EndsWith;
using testing::SizeIs;

class NumbersAndTexts : public TransferTest {
 protected:
  const ImportOptions comma_{.decimalComma = true, .again = false, .by = {}};
};

TEST_F(NumbersAndTexts, DecimalCommasAreTakenWhereAnnounced) {
  Shop shop = newShop();
  imported(shop, TableKind::Tools, "tool,type,class,max,unit\nT1,II,A,\"12,5\",N.m\n", comma_);
  imported(shop, TableKind::Tools, "tool;type;class;max;unit\nT2;II;A;12,5;N.m\n", comma_);
  EXPECT_EQ(shop.tool("T1")->maximum, 12.5);
  EXPECT_EQ(shop.tool("T2")->maximum, 12.5);
  // Then a point can only be a thousands mark, which no file of ours has.
  EXPECT_THAT(refused(shop, TableKind::Tools, "tool;type;class;max;unit\nT3;II;A;1.250;N.m\n", comma_), SizeIs(1));
}

TEST_F(NumbersAndTexts, ReadingsKeepTheDigitsAsTyped) {
  Shop shop = smallShop();
  imported(shop, TableKind::Checks,
           "tool;date;phase;target;reading;unit\nTW-1;2026-01-31;as_found;60;60,10;N.m\nTW-1;2026-01-31;as_found;60; "
           "+60 ;N.m\n",
           comma_);
  EXPECT_THAT(shop.checksOf("TW-1")->front().points.at(0).readings, ElementsAre("60.10", "+60"));
}

TEST_F(NumbersAndTexts, NumbersAreNeverGuarded) {
  Shop shop = newShop();
  imported(shop, TableKind::References, "reference,expanded_uncertainty_percent,error_percent\nR,0.4,-0.05\n");
  EXPECT_THAT(exported(shop, TableKind::References), EndsWith("\r\nR,,,,,,0.4,,-0.05\r\n"));
  EXPECT_THAT(
      refused(shop, TableKind::References, "reference,expanded_uncertainty_percent,error_percent\nS,0.4,'-0.05\n"),
      SizeIs(1));
}

TEST_F(NumbersAndTexts, LineBreaksInTextsBecomeLineFeeds) {
  Shop shop = newShop();
  imported(shop, TableKind::Tools, "tool,description,type,class,max,unit\r\nT,\"one\r\ntwo\",II,A,10,N.m\r\n");
  EXPECT_EQ(shop.tool("T")->description, "one\ntwo");
}

TEST_F(NumbersAndTexts, FlagsAreYesOrNo) {
  Shop shop = newShop();
  std::string bytes = "fastener,component,target,unit,renew\n";
  for (const char* flag : {"yes", "TRUE", "1", "y", "no", "False", "0", "n", ""}) {
    bytes += std::string("F") + flag + ",plug,10,N.m," + flag + "\n";
  }
  imported(shop, TableKind::Fasteners, bytes);
  for (const char* id : {"Fyes", "FTRUE", "F1", "Fy"}) EXPECT_EQ(shop.fastener(id)->renew, true) << id;
  for (const char* id : {"Fno", "FFalse", "F0", "Fn"}) EXPECT_EQ(shop.fastener(id)->renew, false) << id;
  EXPECT_EQ(shop.fastener("F")->renew, std::nullopt);
}

}  // namespace
}  // namespace steadyturn
