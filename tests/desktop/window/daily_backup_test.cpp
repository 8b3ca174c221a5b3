// The backup that the window makes by itself: one a day, whole, beside the shop; never of what is not its to keep.
#include "daily_backup.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QSettings>
#include <QTemporaryDir>

#include "keys.h"
#include "problem_text.h"
#include "shop_proof.h"

namespace steadyturn {
namespace {

class DailyBackups : public testing::Test {
 protected:
  void TearDown() override { QSettings().remove("backup/keep"); }
  std::string shopFile() const { return folder_.filePath("depot.db").toStdString(); }
  QString backups() const { return folder_.filePath("depot.backups"); }
  QStringList made() const { return QDir(backups()).entryList(QDir::Files | QDir::Hidden, QDir::Name); }
  // Looks whether one is due, and comes back when that is done: the worker ends before its owner is gone.
  static std::optional<Problems> look(OpenShop& shop, const std::function<bool()>& done) {
    std::optional<Problems> said;
    DailyBackup daily(shop);
    QObject::connect(&daily, &DailyBackup::failed, &daily, [&](const Problems& problems) { said = problems; });
    daily.look();
    EXPECT_TRUE(wait([&] { return said || done(); }));
    return said;
  }
  static bool never() {
    QTest::qWait(300);  // long enough for a backup to begin
    return true;
  }

  QTemporaryDir folder_;
  OpenShop shop_{Shop::create(shopFile()).value()};
};

TEST_F(DailyBackups, oneADayBesideTheShopWithTheHeadInItsName) {
  EXPECT_EQ(backupFolder(shop_.shop()), backups());
  EXPECT_FALSE(look(shop_, [this] { return made().size() == 1 && !made().front().contains("unfinished"); }));
  ASSERT_EQ(made().size(), 1);
  const auto copy = Shop::open((backups() + "/" + made().front()).toStdString(), Access::Look);
  ASSERT_TRUE(copy);
  EXPECT_TRUE(verifyShop(*copy)->intact());
  const auto head = ledgerHead(shop_.shop()).value();
  EXPECT_EQ(writeCheckpoint(*ledgerHead(*copy)), writeCheckpoint(head));
  EXPECT_TRUE(made().front().contains(QString::fromStdString(writeHash(head.root).substr(0, 16))));

  // What is new is for tomorrow; when that is here, the next one is made.
  ASSERT_TRUE(shop_.shop().change({.name = "Depot", .place = "hall 2", .country = {}}, shop_.shop().policy()));
  const auto name = made().front();
  const auto today = QString::fromStdString(writeDate(shop_.shop().today()));
  ASSERT_TRUE(name.contains(today)) << name.toStdString();
  const auto yesterday = QString::fromStdString(writeDate(shop_.shop().today() - std::chrono::days(1)));
  ASSERT_TRUE(QFile::rename(backups() + "/" + name, backups() + "/" + QString(name).replace(today, yesterday)));
  EXPECT_FALSE(look(shop_, [this] { return made().size() == 2 && made().filter("unfinished").isEmpty(); }));
  EXPECT_EQ(made().filter(today).size(), 1);
}

TEST_F(DailyBackups, noneWhenThePersonWantsNone) {
  QSettings().setValue("backup/keep", 0);
  EXPECT_FALSE(look(shop_, never));
  EXPECT_FALSE(QDir(backups()).exists());
}

TEST_F(DailyBackups, noneOfTheDemoDepotOrOfAShopThatIsOnlyLookedAt) {
  OpenShop demo(Shop::createDemo(folder_.filePath("demo.db").toStdString()).value());
  EXPECT_FALSE(look(demo, never));
  OpenShop looking(Shop::open(shopFile(), Access::Look).value());
  EXPECT_FALSE(look(looking, never));
  EXPECT_EQ(QDir(folder_.path()).entryList({"*.backups"}).size(), 0);
}

TEST_F(DailyBackups, saysWhyItCouldNotBeMade) {
  QFile inTheWay(backups());
  ASSERT_TRUE(inTheWay.open(QIODevice::WriteOnly));
  const auto said = look(shop_, [] { return false; });
  ASSERT_TRUE(said);
  EXPECT_EQ(said->front().kind, ProblemKind::CannotCreate);
  EXPECT_TRUE(wordProblems(*said).contains("depot.backups")) << wordProblems(*said).toStdString();
}

}  // namespace
}  // namespace steadyturn
