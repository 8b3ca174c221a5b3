// A tool whose very first check fails has no good check to interpolate from. The contract's figures take the
// deviation found bad throughout; beside them stands what tools like it make likely, told as borrowed.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>

#include "wrench_shop.h"

namespace steadyturn {
namespace {

using test::on;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

class RecallOfAFirstCheck : public test::WrenchShop {
 protected:
  void SetUp() override {
    WrenchShop::SetUp();
    Fastener plug;
    plug.id = "F";
    plug.component = "drain plug";
    plug.target = 60;
    plug.low = 57;
    plug.high = 63;
    ASSERT_TRUE(shop.addFastener(plug));
    addTool("T");
  }
  // From an older record: the Bay lets nobody use a tool that was never checked.
  void tighten(const std::string& date) {
    const auto path = folder.filePath(QString::fromStdString(date) + ".csv").toStdString();
    std::ofstream(path) << "job,vehicle,date,fastener,tool,setting,unit,seat_checked,by\nJ,van 3," << date
                        << ",F,T,60,N.m,,Sven\n";
    ASSERT_TRUE(shop.importCsv(TableKind::Tightenings, path, {}));
  }
  // Seven tools that drift by 0.8 to 1.4 % a year.
  void addFleet() {
    for (int tool = 0; tool < 7; ++tool) {
      const std::string id = "W" + std::to_string(tool);
      addTool(id);
      for (int year = 0; year < 4; ++year) {
        check(id, on("2021-03-01") + std::chrono::days(365 * year + 9 * tool),
              (0.8 + 0.1 * tool) * year + 0.15 * std::sin(5.0 * tool + 2.0 * year) - 1);
      }
    }
  }
};

TEST_F(RecallOfAFirstCheck, IsCarriedBackAlongTheFleetsDriftBesideTheContractsFigures) {
  addFleet();
  tighten("2023-06-01");
  tighten("2025-05-25");
  check("T", on("2025-06-01"), 5);
  const auto list = shop.recall("T").value();
  EXPECT_FALSE(list.lastGood);
  ASSERT_THAT(list.tightenings, SizeIs(2));
  EXPECT_THAT(list.borrowed, HasSubstr("Drift borrowed from the fleet: 100 %, 7 tools alike"));
  for (const auto& line : list.tightenings) {
    // The contract's figures stay: the deviation found bad is taken for every day before.
    EXPECT_NEAR(line.result.onTheDay.deviationPercent, 5, 1e-9);
    EXPECT_EQ(line.result.onTheDay.probabilityBelow, line.result.worstCase.probabilityBelow);
    ASSERT_TRUE(line.result.byFleet);
    // The tools' true slopes are 1.1 % a year in the mean, with scatter about it.
    const double years = yearsBetween(line.tightening.date, on("2025-06-01"));
    EXPECT_NEAR(line.result.byFleet->deviationPercent, 5 - 1.1 * years, 0.05 + 0.1 * years);
    EXPECT_LE(line.result.byFleet->probabilityBelow, line.result.onTheDay.probabilityBelow + 0.3);
  }
  const auto& early =
      list.tightenings[0].tightening.date < on("2024-01-01") ? list.tightenings[0] : list.tightenings[1];
  const auto& late = &early == &list.tightenings[0] ? list.tightenings[1] : list.tightenings[0];
  EXPECT_LT(early.result.byFleet->probabilityBelow, late.result.byFleet->probabilityBelow);
}

TEST_F(RecallOfAFirstCheck, SaysThatItIsAssumedWhereNoToolIsOnRecord) {
  tighten("2025-05-25");
  check("T", on("2025-06-01"), 5);
  const auto list = shop.recall("T").value();
  EXPECT_THAT(list.borrowed, HasSubstr("assumed, no record yet"));
  EXPECT_THAT(list.borrowed, HasSubstr("ISO 6789"));
  ASSERT_TRUE(list.tightenings.at(0).result.byFleet);
  EXPECT_NEAR(list.tightenings[0].result.byFleet->deviationPercent, 5, 1e-9);  // no direction of drift is assumed
}

TEST_F(RecallOfAFirstCheck, BorrowsNothingWhereThereIsAGoodCheck) {
  addFleet();
  check("T", on("2025-01-01"), 1);
  tighten("2025-03-18");
  check("T", on("2025-06-01"), 5);
  const auto list = shop.recall("T").value();
  EXPECT_TRUE(list.lastGood);
  EXPECT_THAT(list.borrowed, IsEmpty());
  EXPECT_FALSE(list.tightenings.at(0).result.byFleet);
}

}  // namespace
}  // namespace steadyturn
