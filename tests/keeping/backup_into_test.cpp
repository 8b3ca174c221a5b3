// Backups that name themselves by day and head, and which of them stay.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QTemporaryDir>

#include "backup_name.h"
#include "shop_keeping.h"
#include "shop_proof.h"

namespace steadyturn {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

std::string named(const std::string& day, int size = 7) {
  return "depot." + day + "." + std::to_string(size) + "-0123456789abcdef.backup";
}

TEST(BackupName, IsReadAsItWasWritten) {
  const BackupName name{.shop = "my.depot-2", .day = "2026-03-14", .size = 584, .rootBegins = "9f86d081884c7d65"};
  EXPECT_EQ(writeBackupName(name), "my.depot-2.2026-03-14.584-9f86d081884c7d65.backup");
  EXPECT_EQ(readBackupName(writeBackupName(name)), name);
  for (const char* other :
       {"", "depot.db", "depot.2026-03-14.584.backup", "depot.2026-03-14.584-9F86d081884c7d65.backup"}) {
    EXPECT_FALSE(readBackupName(other)) << other;
  }
}

TEST(Retention, KeepsTheNewestAndTheLastOfEachMonth) {
  const auto outdated =
      outdatedBackups({named("2026-03-14"), named("2026-03-13"), named("2026-03-12"), named("2026-03-11"),
                       named("2026-02-27"), named("2026-02-28"), named("2025-11-01")},
                      "depot", 2);
  EXPECT_THAT(outdated, ElementsAre(named("2026-03-12"), named("2026-03-11"), named("2026-02-27")));
}

TEST(Retention, LeavesOtherFilesAndOtherShopsAlone) {
  EXPECT_THAT(
      outdatedBackups({"depot.db", "notes.txt", "depot2" + named("2020-01-01"), named("2026-03-14")}, "depot", 1),
      IsEmpty());
}

TEST(Retention, NeverTakesTheLastOne) {
  EXPECT_THAT(outdatedBackups({named("2026-03-14", 8), named("2026-03-14", 7)}, "depot", 0),
              ElementsAre(named("2026-03-14", 7)));
}

TEST(Retention, MonthsEndAfterAYear) {
  std::vector<std::string> names;
  for (int year = 2024; year <= 2026; ++year) {
    for (int month = 1; month <= 12; ++month) {
      names.push_back(named(std::to_string(year) + (month < 10 ? "-0" : "-") + std::to_string(month) + "-15"));
    }
  }
  EXPECT_EQ(outdatedBackups(names, "depot", 1).size(), 24U);
}

TEST(BackupInto, NamesTheHeadAndDoesNothingTwice) {
  QTemporaryDir folder;
  const auto in = [&](const char* name) { return folder.filePath(name).toStdString(); };
  auto shop = Shop::create(in("depot.db")).value();
  const auto first = backupInto(shop, in("backups"), 3);
  ASSERT_TRUE(first);
  EXPECT_TRUE(first->made);
  const auto read = readBackupName(QFileInfo(QString::fromStdString(first->file)).fileName().toStdString());
  ASSERT_TRUE(read);
  EXPECT_EQ(read->shop, "depot");
  EXPECT_EQ(read->size, first->head.size);
  EXPECT_EQ(writeHash(first->head.root).substr(0, 16), read->rootBegins);
  EXPECT_EQ(writeCheckpoint(*ledgerHead(*Shop::open(first->file, Access::Look))), writeCheckpoint(first->head));
  EXPECT_FALSE(backupInto(shop, in("backups"), 3)->made) << "nothing is new";
  EXPECT_FALSE(*backupDaily(shop, in("backups"), 3)) << "today's is there";
  ASSERT_TRUE(shop.change({.name = "Depot", .place = "hall 2", .country = {}}, shop.policy()));
  EXPECT_FALSE(*backupDaily(shop, in("backups"), 3));
  EXPECT_TRUE(backupInto(shop, in("backups"), 3)->made);
  EXPECT_EQ(QDir(folder.filePath("backups")).entryList(QDir::Files | QDir::Hidden).size(), 2);
  const auto nowhere = backupInto(shop, "/proc/no/such", 3);
  ASSERT_FALSE(nowhere);
  EXPECT_EQ(nowhere.error().front().kind, ProblemKind::CannotCreate);
}

}  // namespace
}  // namespace steadyturn
