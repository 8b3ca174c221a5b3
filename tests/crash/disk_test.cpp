// A disk that fills up, a shop that goes away: said, with what to do, and nothing saved is lost.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/mount.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "crash_shop.h"
#include "shop_keeping.h"
#include "shop_proof.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;

// A file system of its own with so little room.
class SmallDisk : public testing::Test {
 protected:
  void SetUp() override {
    if (::mount("tmpfs", path("").c_str(), "tmpfs", 0, "size=3m") != 0)
      GTEST_SKIP() << "mounting a small disk needs the superuser";
    mounted_ = true;
  }
  void TearDown() override {
    if (mounted_) ::umount(path("").c_str());
  }
  std::string path(const std::string& name) const { return folder_.path().toStdString() + "/" + name; }
  // Leaves so few bytes.
  void fillUp(qint64 left) {
    QFile filler(QString::fromStdString(path("filler")));
    ASSERT_TRUE(filler.open(QIODevice::WriteOnly | QIODevice::Unbuffered));
    const QByteArray block(4096, 'x');
    while (filler.write(block) == block.size()) {
    }
    ASSERT_TRUE(filler.resize(std::max<qint64>(0, filler.size() - left)));
  }
  void makeRoom() { ASSERT_TRUE(QFile::remove(QString::fromStdString(path("filler")))); }
  static void expectFull(const Problems& problems) {
    EXPECT_EQ(problems.front().kind, ProblemKind::Unavailable);
    EXPECT_THAT(problems.front().accepted, testing::AnyOf(HasSubstr("disk is full"), HasSubstr("free space")));
  }
  QTemporaryDir folder_;
  bool mounted_ = false;
};

TEST_F(SmallDisk, AnImportThatDoesNotFitLeavesNothingAndWorksOnceThereIsRoom) {
  QTemporaryDir elsewhere;
  const auto csv = elsewhere.filePath("checks.csv").toStdString();
  writeChecks(csv, 400);
  auto shop = Shop::create(path("depot.db")).value();
  fill(shop);
  fillUp(100'000);
  const auto full = shop.importCsv(TableKind::Checks, csv, {});
  ASSERT_FALSE(full);
  expectFull(full.error());
  EXPECT_TRUE(shop.checksOf("T1")->empty());
  makeRoom();
  EXPECT_TRUE(shop.importCsv(TableKind::Checks, csv, {}));
  EXPECT_TRUE(verifyShop(shop)->intact());
}

TEST_F(SmallDisk, ChecksAreSavedTillItIsFullAndThenSaidNotToBe) {
  auto shop = Shop::create(path("depot.db")).value();
  fill(shop);
  fillUp(200'000);
  std::size_t saved = 0;
  Result<Check> last = shop.recordCheck(checkOfDay(0));
  while (last && saved < 1000) last = shop.recordCheck(checkOfDay(static_cast<int>(++saved)));
  ASSERT_FALSE(last);
  expectFull(last.error());
  EXPECT_EQ(shop.checksOf("T1")->size(), saved);
  EXPECT_EQ(Shop::open(path("depot.db"))->checksOf("T1")->size(), saved) << "another connection sees the same";
  makeRoom();
  EXPECT_TRUE(shop.recordCheck(checkOfDay(static_cast<int>(saved))));
  EXPECT_TRUE(verifyShop(shop)->intact());
}

TEST_F(SmallDisk, ABackupThatDoesNotFitIsNotThere) {
  auto shop = Shop::create(path("depot.db")).value();
  fill(shop);
  fillUp(50'000);
  EXPECT_FALSE(backupInto(shop, path("backups")));
  EXPECT_TRUE(QDir(QString::fromStdString(path("backups"))).entryList(QDir::Files | QDir::Hidden).isEmpty());
  makeRoom();
  EXPECT_TRUE(backupInto(shop, path("backups")));
}

TEST_F(SmallDisk, AShopIsNotMadeWhereItDoesNotFit) {
  fillUp(50'000);
  const auto made = Shop::create(path("depot.db"));
  ASSERT_FALSE(made);
  EXPECT_EQ(made.error().front().kind, ProblemKind::CannotCreate);
  EXPECT_FALSE(QFile::exists(QString::fromStdString(path("depot.db"))));
}

class Vanished : public testing::Test {
 protected:
  Vanished() { fill(shop_); }
  std::string in(const std::string& name) const {
    return folder_.filePath(QString::fromStdString(name)).toStdString();
  }
  void expectGone() {
    const auto refused = shop_.recordCheck(checkOfDay(1));
    ASSERT_FALSE(refused) << "it would be saved where nobody looks for it";
    EXPECT_EQ(refused.error().front().kind, ProblemKind::Unavailable);
    EXPECT_THAT(refused.error().front().accepted, HasSubstr("open it again"));
  }
  QTemporaryDir folder_;
  Shop shop_ = Shop::create(in("depot.db")).value();
};

TEST_F(Vanished, AShopThatWasMovedTakesNothingMore) {
  ASSERT_TRUE(QFile::rename(QString::fromStdString(in("depot.db")), QString::fromStdString(in("elsewhere.db"))));
  expectGone();
  ASSERT_TRUE(QFile::rename(QString::fromStdString(in("elsewhere.db")), QString::fromStdString(in("depot.db"))));
  EXPECT_TRUE(shop_.recordCheck(checkOfDay(1))) << "it is back";
}

TEST_F(Vanished, AShopThatWasDeletedOrReplacedTakesNothingMore) {
  ASSERT_TRUE(QFile::remove(QString::fromStdString(in("depot.db"))));
  expectGone();
  {
    QFile other(QString::fromStdString(in("depot.db")));
    ASSERT_TRUE(other.open(QIODevice::WriteOnly));
  }
  expectGone();
}

}  // namespace
}  // namespace steadyturn
