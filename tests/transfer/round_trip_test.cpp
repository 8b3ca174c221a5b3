// Export → new shop → import → export gives the same bytes.
#include <gtest/gtest.h>

#include <array>

#include "transfer_fixture.h"

namespace steadyturn {
namespace {

constexpr std::array kinds{TableKind::Tools, TableKind::References, TableKind::Fasteners, TableKind::Checks,
                           TableKind::Tightenings};

class RoundTrip : public TransferTest {
 protected:
  void expectSameBytes(const Shop& first, bool decimalComma) {
    Shop second = newShop();
    for (const TableKind kind : kinds) {
      const std::string bytes = exported(first, kind, {.decimalComma = decimalComma});
      imported(second, kind, bytes, {.decimalComma = decimalComma, .again = false, .by = {}});
      EXPECT_EQ(exported(second, kind, {.decimalComma = decimalComma}), bytes) << writeTableKind(kind);
    }
  }
};

TEST_F(RoundTrip, OfTheWholeDemoDepot) {
  const auto demo = Shop::createDemo(in("demo"));
  ASSERT_TRUE(demo);
  ASSERT_GT(exported(*demo, TableKind::Checks).size(), 10'000U);
  expectSameBytes(*demo, false);
  expectSameBytes(*demo, true);
}

TEST_F(RoundTrip, OfAnEmptyShopIsTheHeaders) {
  const Shop empty = newShop();
  EXPECT_EQ(exported(empty, TableKind::Tools),
            "tool,description,maker,serial,type,class,min,max,unit,resolution,drive,interval_days,limit_percent\r\n");
  EXPECT_EQ(exported(empty, TableKind::References),
            "reference,description,serial,certificate,calibrated,due,expanded_uncertainty_percent,coverage_factor,"
            "error_percent\r\n");
  EXPECT_EQ(exported(empty, TableKind::Fasteners),
            "fastener,assembly,component,thread,property_class,part_material,drive,target,low,high,unit,angle_deg,"
            "part_limit,seal,renew,lubrication,seat_check,source,revision\r\n");
  EXPECT_EQ(exported(empty, TableKind::Checks), "tool,date,phase,target,reading,unit,reference,by\r\n");
  EXPECT_EQ(exported(empty, TableKind::Tightenings),
            "job,vehicle,date,fastener,tool,setting,unit,seat_checked,by\r\n");
  expectSameBytes(empty, false);
}

// What is hard to carry: separators, quotes, line breaks, formulas, apostrophes, accents, every optional cell filled.
TEST_F(RoundTrip, OfTextsThatAreHardToCarry) {
  Shop shop = newShop();
  imported(shop, TableKind::Tools,
           "tool,description,maker,serial,type,class,min,max,unit,resolution,drive,interval_days,limit_percent\r\n"
           "'=T1,\"a \"\"half inch\"\" wrench, long; red\",'+maker,''-7,II,a,4,20.50,lbf ft,0.5,\"1/2\"\" "
           "square\",180,3\r\n"
           "'twas,\"two\nlines\",Sch\xC3\xBCtz,'@x,I,B,,60,Nm,,,,\r\n");
  imported(shop, TableKind::References,
           "reference,description,serial,certificate,calibrated,due,expanded_uncertainty_percent,coverage_factor,"
           "error_percent\r\n"
           "'-R,transducer,'007,C;1,2026-01-05,2027-01-05,0.40,2,-0.1\r\n");
  imported(shop, TableKind::Fasteners,
           "fastener,assembly,component,thread,property_class,part_material,drive,target,low,high,unit,angle_deg,"
           "part_limit,"
           "seal,renew,lubrication,seat_check,source,revision\r\n"
           "F1,'=engine,\"housing, lower\",M14x1.5,8.8,plastic,27 "
           "mm,18,16,20,N.m,90,21,O-ring,TRUE,oil,flush,handbook 4,'-B\r\n");
  imported(shop, TableKind::Checks,
           "tool,date,phase,target,reading,unit,reference,by\r\n"
           "'=T1,2026-01-31,as_found,4,4.010,lbf.ft,'-R,'@bench\r\n"
           "'=T1,2026-01-31,as_found,20.5,+20.60,lbf.ft,'-R,'@bench\r\n");
  imported(shop, TableKind::Tightenings,
           "job,vehicle,date,fastener,tool,setting,unit,seat_checked,by\r\n"
           "'=J;1,\"sweeper \"\"4\"\"\",2026-02-01,F1,'twas,18.0,N.m,yes,'+me\r\n"
           "'=J;1,\"sweeper \"\"4\"\"\",2026-02-01,F1,'twas,18.0,N.m,,\r\n");
  EXPECT_EQ(shop.tool("=T1")->serial, "'-7");
  EXPECT_EQ(shop.tool("'twas")->serial, "@x");
  EXPECT_EQ(shop.fastener("F1")->assembly, "=engine");
  EXPECT_EQ(exported(shop, TableKind::Tools),
            "tool,description,maker,serial,type,class,min,max,unit,resolution,drive,interval_days,limit_percent\r\n"
            "'twas,\"two\nlines\",Sch\xC3\xBCtz,'@x,I,B,,60,N.m,,,,\r\n"
            "'=T1,\"a \"\"half inch\"\" wrench, long; red\",'+maker,''-7,II,A,4,20.5,lbf.ft,0.5,\"1/2\"\" "
            "square\",180,3\r\n");
  EXPECT_EQ(exported(shop, TableKind::Checks),
            "tool,date,phase,target,reading,unit,reference,by\r\n"
            "'=T1,2026-01-31,as_found,4,4.010,lbf.ft,'-R,'@bench\r\n"
            "'=T1,2026-01-31,as_found,20.5,+20.60,lbf.ft,'-R,'@bench\r\n");
  expectSameBytes(shop, false);
  expectSameBytes(shop, true);
}

TEST_F(RoundTrip, WithDecimalCommasUsesSemicolons) {
  Shop shop = smallShop();
  imported(shop, TableKind::Checks, "tool;date;phase;target;reading;unit\nTW-1;2026-01-31;as_found;20,5;20,15;Nm\n",
           {.decimalComma = true, .again = false, .by = "bench"});
  EXPECT_EQ(exported(shop, TableKind::Checks, {.decimalComma = true}),
            "tool;date;phase;target;reading;unit;reference;by\r\n"
            "TW-1;2026-01-31;as_found;20,5;20,15;N.m;;bench\r\n");
  EXPECT_EQ(exported(shop, TableKind::Checks),
            "tool,date,phase,target,reading,unit,reference,by\r\n"
            "TW-1,2026-01-31,as_found,20.5,20.15,N.m,,bench\r\n");
}

}  // namespace
}  // namespace steadyturn
