// A disk that turns read-only under an open shop, and one that is pulled out: said, and what was saved is there.
//
// A file system of its own (ext4 in a file), which Linux turns read-only as it does after an error of the disk: with
// files open on it, and without writing out what it still had to. mount(8), "abort".
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/mount.h>

#include <QDir>
#include <QFile>
#include <QProcess>
#include <QTemporaryDir>
#include <memory>

#include "crash_shop.h"
#include "shop_keeping.h"
#include "shop_proof.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;

bool ran(const QString& program, const QStringList& arguments) { return QProcess::execute(program, arguments) == 0; }

class FailingDisk : public testing::Test {
 protected:
  void SetUp() override {
    QFile image(image_);
    ASSERT_TRUE(image.open(QIODevice::WriteOnly) && image.resize(16 * 1024 * 1024));
    image.close();
    ASSERT_TRUE(QDir().mkpath(disk_));
    if (!ran("mkfs.ext4", {"-q", image_}) || !plugIn())
      GTEST_SKIP() << "needs the superuser, mkfs.ext4 and a loop device";
    shop_ = std::make_unique<Shop>(Shop::create(path("depot.db")).value());
    fill(*shop_);
    ASSERT_TRUE(shop_->recordCheck(checkOfDay(0)));
  }
  void TearDown() override {
    shop_.reset();
    ::umount2(disk_.toLocal8Bit(), MNT_DETACH);
  }
  bool plugIn() { return ran("mount", {"-o", "loop", image_, disk_}); }
  void turnReadOnly() { ASSERT_TRUE(ran("mount", {"-o", "remount,abort", disk_})); }
  std::string path(const std::string& name) const { return disk_.toStdString() + "/" + name; }
  static void expectUnavailable(const Problems& problems, const std::string& whatToDo) {
    EXPECT_EQ(problems.front().kind, ProblemKind::Unavailable);
    EXPECT_THAT(problems.front().accepted, HasSubstr(whatToDo));
  }

  QTemporaryDir folder_;
  QString image_ = folder_.filePath("image"), disk_ = folder_.filePath("disk");
  std::unique_ptr<Shop> shop_;
};

TEST_F(FailingDisk, ThatTurnsReadOnlyTakesNothingMoreAndKeepsWhatWasSaved) {
  turnReadOnly();
  const auto refused = shop_->recordCheck(checkOfDay(1));
  ASSERT_FALSE(refused);
  expectUnavailable(refused.error(), "disk");
  EXPECT_EQ(shop_->checksOf("T1")->size(), 1U) << "what was saved can be looked at";
  EXPECT_FALSE(backupInto(*shop_, path("backups")));
  EXPECT_TRUE(backupInto(*shop_, folder_.filePath("backups").toStdString())) << "and saved to another disk";
  {
    const auto again = Shop::open(path("depot.db"));
    if (again) {
      EXPECT_EQ(again->checksOf("T1")->size(), 1U);
    } else {
      expectUnavailable(again.error(), "");
    }
  }
  shop_.reset();
  ASSERT_EQ(::umount(disk_.toLocal8Bit()), 0);
  ASSERT_TRUE(plugIn());
  auto mended = Shop::open(path("depot.db"));
  ASSERT_TRUE(mended) << mended.error().front().accepted;
  EXPECT_EQ(mended->checksOf("T1")->size(), 1U);
  EXPECT_TRUE(verifyShop(*mended)->intact());
  EXPECT_TRUE(mended->recordCheck(checkOfDay(1)));
}

TEST_F(FailingDisk, ThatIsPulledOutTakesNothingMoreAndKeepsWhatWasSaved) {
  ASSERT_EQ(::umount2(disk_.toLocal8Bit(), MNT_DETACH), 0);
  const auto refused = shop_->recordCheck(checkOfDay(1));
  ASSERT_FALSE(refused);
  expectUnavailable(refused.error(), "open it again");
  const auto opened = Shop::open(path("depot.db"));
  ASSERT_FALSE(opened);
  expectUnavailable(opened.error(), "nothing is there");
  shop_.reset();
  ASSERT_TRUE(plugIn());
  auto back = Shop::open(path("depot.db"));
  ASSERT_TRUE(back) << back.error().front().accepted;
  EXPECT_EQ(back->checksOf("T1")->size(), 1U);
  EXPECT_TRUE(verifyShop(*back)->intact());
}

}  // namespace
}  // namespace steadyturn
