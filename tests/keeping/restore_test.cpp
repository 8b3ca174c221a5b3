// A backup takes a shop's place only when it is whole, and nothing that was there is lost.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "shop_keeping.h"
#include "shop_proof.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;

class Restore : public testing::Test {
 protected:
  std::string in(const std::string& name) const {
    return folder_.filePath(QString::fromStdString(name)).toStdString();
  }
  QStringList files() const { return QDir(folder_.path()).entryList(QDir::Files | QDir::Hidden, QDir::Name); }
  void SetUp() override {
    auto shop = Shop::create(in("depot.db"), "Depot").value();
    backup_ = backupInto(shop, in("backups"))->file;
    ASSERT_TRUE(shop.change({.name = "Later", .place = {}, .country = {}}, shop.policy()));
  }
  static ProblemKind kindOf(const Result<Restored>& result) { return result.error().front().kind; }
  QTemporaryDir folder_;
  std::string backup_;
};

TEST_F(Restore, MakesAShopWhereNoneIs) {
  const auto restored = restoreShop(backup_, in("new.db"), false);
  ASSERT_TRUE(restored);
  EXPECT_TRUE(restored->old.empty());
  const auto shop = Shop::open(in("new.db")).value();
  EXPECT_EQ(shop.name(), "Depot");
  EXPECT_EQ(writeCheckpoint(*ledgerHead(shop)), writeCheckpoint(restored->head));
}

TEST_F(Restore, ReplacesOnlyWhenAskedAndKeepsTheOldBeside) {
  const auto before = files();
  EXPECT_EQ(kindOf(restoreShop(backup_, in("depot.db"), false)), ProblemKind::CannotCreate);
  EXPECT_EQ(files(), before);
  for (int time = 0; time < 2; ++time) {
    const auto restored = restoreShop(backup_, in("depot.db"), true);
    ASSERT_TRUE(restored);
    EXPECT_EQ(Shop::open(restored->old)->name(), time == 0 ? "Later" : "Depot");
    EXPECT_EQ(Shop::open(in("depot.db"))->name(), "Depot");
  }
  EXPECT_TRUE(verifyShop(Shop::open(in("depot.db")).value())->intact());
}

TEST_F(Restore, WaitsTillNobodyHasTheShopOpen) {
  const pid_t other = ::fork();
  if (other == 0) {
    const auto shop = Shop::open(in("depot.db"));
    if (!shop || !shop->tools()) ::_exit(1);
    QFile(QString::fromStdString(in("opened"))).open(QIODevice::WriteOnly);
    ::pause();
  }
  for (int i = 0; i < 200 && !QFile::exists(QString::fromStdString(in("opened"))); ++i) ::usleep(50'000);
  const auto refused = restoreShop(backup_, in("depot.db"), true);
  ::kill(other, SIGKILL);
  ::waitpid(other, nullptr, 0);
  ASSERT_FALSE(refused);
  EXPECT_EQ(kindOf(refused), ProblemKind::Unavailable);
  EXPECT_THAT(refused.error().front().accepted, HasSubstr("close it"));
  EXPECT_EQ(Shop::open(in("depot.db"))->name(), "Later");
  EXPECT_TRUE(restoreShop(backup_, in("depot.db"), true)) << "a killed program holds nothing";
}

TEST_F(Restore, RefusesWhatIsNoWholeBackup) {
  const auto before = files();
  EXPECT_EQ(kindOf(restoreShop(in("missing"), in("depot.db"), true)), ProblemKind::FileMissing);
  // Renamed: the head is not the one the name tells.
  const auto renamed = in("depot.2026-03-14.584-9f86d081884c7d65.backup");
  ASSERT_TRUE(QFile::copy(QString::fromStdString(backup_), QString::fromStdString(renamed)));
  EXPECT_EQ(kindOf(restoreShop(renamed, in("depot.db"), true)), ProblemKind::Conflict);
  QFile::remove(QString::fromStdString(renamed));
  // Cut short: a copy that was not finished.
  const auto cut = in("cut.backup");
  ASSERT_TRUE(QFile::copy(QString::fromStdString(backup_), QString::fromStdString(cut)));
  ASSERT_TRUE(QFile(QString::fromStdString(cut)).resize(QFile(QString::fromStdString(cut)).size() / 2));
  EXPECT_FALSE(restoreShop(cut, in("depot.db"), true));
  QFile::remove(QString::fromStdString(cut));
  EXPECT_EQ(files(), before);
  EXPECT_EQ(Shop::open(in("depot.db"))->name(), "Later");
}

}  // namespace
}  // namespace steadyturn
