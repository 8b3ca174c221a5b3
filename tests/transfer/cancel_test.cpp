// Stopping, and outputs that fail.
#include <gmock/gmock.h>

#include <algorithm>
#include <sstream>
#include <streambuf>
#include <vector>

#include "transfer_fixture.h"

namespace steadyturn {
namespace {

using testing::SizeIs;

class Cancel : public TransferTest {
 protected:
  Shop shop_ = smallShop();
  // So many checks of one reading each, a day each.
  static std::string checks(int count) {
    std::string bytes = "tool,date,phase,target,reading,unit\n";
    for (int i = 0; i < count; ++i) {
      bytes += "TW-1," + writeDate(Date(std::chrono::days(10'000 + i))) + ",as_found,60,60.1,N.m\n";
    }
    return bytes;
  }
};

TEST_F(Cancel, LeavesNothingBehindWhereverItComes) {
  const std::string bytes = checks(300);
  for (const double when : {0.0, 0.35, 0.95}) {
    const auto report = import(shop_, TableKind::Checks, bytes, {}, [&](double fraction) { return fraction < when; });
    ASSERT_FALSE(report);
    ASSERT_THAT(report.error(), SizeIs(1));
    EXPECT_EQ(report.error()[0].kind, ProblemKind::Cancelled);
    EXPECT_TRUE(shop_.checksOf("TW-1")->empty());
  }
  // Nor is the file held against a later try.
  EXPECT_EQ(imported(shop_, TableKind::Checks, bytes).records, 300);
}

TEST_F(Cancel, ProgressRisesInSmallStepsToTheEnd) {
  std::vector<double> told;
  ASSERT_TRUE(import(shop_, TableKind::Checks, checks(1000), {}, [&](double fraction) {
    told.push_back(fraction);
    return true;
  }));
  EXPECT_TRUE(std::ranges::is_sorted(told));
  EXPECT_GT(told.size(), 50U);
  EXPECT_LE(told.size(), 101U);
  EXPECT_EQ(told.back(), 1);
}

TEST_F(Cancel, StopsAnExport) {
  imported(shop_, TableKind::Checks, checks(10));
  std::ostringstream out;
  const auto done = shop_.exportCsv(TableKind::Checks, out, {}, [](double) { return false; });
  ASSERT_FALSE(done);
  EXPECT_EQ(done.error()[0].kind, ProblemKind::Cancelled);
}

// A disk that is full after so many bytes.
class FullDisk : public std::streambuf {
 public:
  explicit FullDisk(std::streamsize room) : room_(room) {}

 protected:
  std::streamsize xsputn(const char*, std::streamsize count) override {
    const std::streamsize taken = std::min(room_, count);
    room_ -= taken;
    return taken;
  }
  int overflow(int) override { return traits_type::eof(); }

 private:
  std::streamsize room_;
};

TEST_F(Cancel, AnExportOntoAFullDiskSaysSo) {
  imported(shop_, TableKind::Checks, checks(5000));
  for (const std::streamsize room : {0, 100, 100'000}) {
    FullDisk disk(room);
    std::ostream out(&disk);
    const auto done = shop_.exportCsv(TableKind::Checks, out);
    ASSERT_FALSE(done);
    ASSERT_THAT(done.error(), SizeIs(1));
    EXPECT_EQ(done.error()[0].kind, ProblemKind::CannotCreate);
  }
}

}  // namespace
}  // namespace steadyturn
