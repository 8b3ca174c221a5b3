#include <gtest/gtest.h>

#include <QFile>

#include "demo_copy.h"
#include "raw_shop.h"

namespace steadyturn {
namespace {

class Backup : public testing::Test {
 protected:
  void TearDown() override { QFile::remove(QString::fromStdString(target)); }
  std::string target = demoCopies().in("backup.sturn");
};

TEST_F(Backup, IsAShopWithTheSameLedger) {
  const auto shop = Shop::open(demoCopies().fresh()).value();
  const auto head = backupShop(shop, target);
  ASSERT_TRUE(head) << head.error().front().accepted;
  EXPECT_EQ(writeCheckpoint(*head), writeCheckpoint(ledgerHead(shop).value()));
  const auto verification = verified(target, *head);
  EXPECT_TRUE(verification.intact()) << listed(verification);
  EXPECT_FALSE(QFile::exists(QString::fromStdString(target + ".unfinished")));
}

TEST_F(Backup, HasWhatIsStillInTheJournal) {
  auto shop = Shop::open(demoCopies().fresh()).value();
  ASSERT_TRUE(shop.holdTool("W06", "fell on the floor"));
  ASSERT_TRUE(backupShop(shop, target));
  EXPECT_EQ(Shop::open(target)->tool("W06")->status, ToolStatus::Held);
}

TEST_F(Backup, ReplacesNothing) {
  const auto shop = Shop::open(demoCopies().fresh()).value();
  QFile other(QString::fromStdString(target));
  ASSERT_TRUE(other.open(QIODevice::WriteOnly));
  other.write("something else");
  other.close();
  const auto refused = backupShop(shop, target);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().front().kind, ProblemKind::CannotCreate);
  ASSERT_TRUE(other.open(QIODevice::ReadOnly));
  EXPECT_EQ(other.readAll(), "something else");
  EXPECT_EQ(backupShop(shop, shop.address()).error().front().kind, ProblemKind::CannotCreate);
}

TEST_F(Backup, NeedsAFolderThatIsThere) {
  const auto shop = Shop::open(demoCopies().fresh()).value();
  const auto refused = backupShop(shop, demoCopies().in("nowhere/backup.sturn"));
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().front().kind, ProblemKind::CannotCreate);
}

}  // namespace
}  // namespace steadyturn
