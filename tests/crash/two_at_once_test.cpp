// Two programs write to one shop: the second waits its turn, and after some seconds says what it waits for.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <signal.h>

#include <QProcess>
#include <QTemporaryDir>
#include <atomic>
#include <thread>

#include "crash_shop.h"
#include "shop_proof.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;

class TwoAtOnce : public testing::Test {
 protected:
  TwoAtOnce() { fill(shop_); }
  // Another program that holds the shop for so long while it writes.
  void holdElsewhere(QProcess& sqlite, double seconds) {
    sqlite.start("sqlite3", {QString::fromStdString(path_)});
    sqlite.write("BEGIN IMMEDIATE;\n.print held\n");
    ASSERT_TRUE(sqlite.waitForReadyRead()) << "needs the Debian package sqlite3";
    release_ = std::thread([&sqlite, seconds] {
      std::this_thread::sleep_for(std::chrono::duration<double>(seconds));
      ::kill(static_cast<pid_t>(sqlite.processId()), SIGKILL);
    });
  }
  QTemporaryDir folder_;
  std::string path_ = folder_.filePath("depot.db").toStdString();
  Shop shop_ = Shop::create(path_).value();
  std::thread release_;
};

TEST_F(TwoAtOnce, TheSecondWaitsItsTurn) {
  QProcess sqlite;
  holdElsewhere(sqlite, 1);
  EXPECT_TRUE(shop_.recordCheck(checkOfDay(1)));
  release_.join();
  sqlite.waitForFinished();
}

TEST_F(TwoAtOnce, AndSaysSoWhenItTakesTooLong) {
  QProcess sqlite;
  holdElsewhere(sqlite, 7);
  const auto busy = shop_.recordCheck(checkOfDay(1));
  EXPECT_TRUE(shop_.checksOf("T1")->empty()) << "looking goes on meanwhile";
  release_.join();
  sqlite.waitForFinished();
  ASSERT_FALSE(busy);
  EXPECT_EQ(busy.error().front().kind, ProblemKind::Unavailable);
  EXPECT_THAT(busy.error().front().accepted, HasSubstr("another program is writing"));
  EXPECT_TRUE(shop_.recordCheck(checkOfDay(1)));
}

TEST_F(TwoAtOnce, TheLogHasNoGapWhenFourWrite) {
  constexpr int each = 40;
  std::atomic<int> saved{0};
  std::vector<std::thread> writers;
  for (int writer = 0; writer < 4; ++writer) {
    writers.emplace_back([&, writer] {
      auto shop = Shop::open(path_).value();
      for (int i = 0; i < each; ++i) saved += shop.recordCheck(checkOfDay(writer * each + i)) ? 1 : 0;
    });
  }
  for (auto& writer : writers) writer.join();
  EXPECT_EQ(saved, 4 * each);
  const auto proof = verifyShop(shop_);
  EXPECT_TRUE(proof->intact());
  EXPECT_EQ(shop_.checksOf("T1")->size(), static_cast<std::size_t>(4 * each));
}

// The window and two runs of the command line, each a process of its own.
TEST_F(TwoAtOnce, ProgramsTakeTurnsAndEachGetsItsAnswer) {
  constexpr int ours = 40, apart = 1000;  // days: no two write the same check
  QProcess others[2];
  for (int i = 0; i < 2; ++i) {
    others[i].start(VICTIM, {"save", QString::fromStdString(path_), QString::number((i + 1) * apart)});
    ASSERT_TRUE(others[i].waitForReadyRead()) << "it saved one";
  }
  for (int day = 0; day < ours; ++day) EXPECT_TRUE(shop_.recordCheck(checkOfDay(day))) << day;
  qsizetype answered = 0;
  for (auto& other : others) {
    EXPECT_EQ(other.state(), QProcess::Running) << "a save of it was refused";
    other.kill();
    other.waitForFinished();
    answered += other.readAllStandardOutput().size();
  }
  const auto saved = static_cast<qsizetype>(shop_.checksOf("T1")->size());
  EXPECT_GE(saved, ours + answered);
  EXPECT_LE(saved, ours + answered + 2) << "a kill may fall between a save and its answer";
  EXPECT_TRUE(verifyShop(shop_)->intact());
}

}  // namespace
}  // namespace steadyturn
