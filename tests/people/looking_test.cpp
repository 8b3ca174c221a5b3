// The auditor's door: a shop that is looked at is left as it was, to the byte, and so is its folder.
#include <sys/mount.h>
#include <sys/stat.h>

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <sstream>

#include "people_fixture.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;

// Every file of a folder with its hash and the time it was changed.
std::string pictureOf(const QString& folder) {
  QString picture;
  const auto files = QDir(folder).entryInfoList(QDir::Files | QDir::Hidden | QDir::System, QDir::Name);
  for (const auto& info : files) {
    QFile file(info.filePath());
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    QCryptographicHash hash(QCryptographicHash::Sha256);
    hash.addData(&file);
    picture += info.fileName() + ' ' + QString::fromLatin1(hash.result().toHex()) + ' ' +
               QString::number(info.lastModified().toMSecsSinceEpoch()) + '\n';
  }
  return picture.toStdString();
}

class Looking : public PeopleTest {
 protected:
  void SetUp() override { ASSERT_TRUE(Shop::createDemo(demo_)); }
  std::string demo_ = in("demo.st");
};

TEST_F(Looking, SeesEverythingAndWritesNothing) {
  const auto before = pictureOf(folder_.path());
  {
    auto shop = Shop::open(demo_, Access::Look).value();
    EXPECT_TRUE(shop.readOnly());
    EXPECT_TRUE(verifyShop(shop)->intact());
    EXPECT_FALSE(shop.overview(shop.today())->empty());
    EXPECT_TRUE(shop.certificate(1));
    EXPECT_TRUE(shop.history("W07", {}, shop.today()));
    std::ostringstream out;
    EXPECT_TRUE(shop.exportCsv(TableKind::Checks, out));
    EXPECT_TRUE(proveCheck(shop, 1));
    for (const Act act : allActs) EXPECT_EQ(kindOf(may(shop, act).error()), ProblemKind::NotPermitted);
    EXPECT_EQ(kindOf(shop.addTool(tool("T1")).error()), ProblemKind::NotPermitted);
    CheckDraft draft;
    draft.tool = "W07";
    EXPECT_EQ(kindOf(shop.saveDraft(draft).error()), ProblemKind::NotPermitted);
    BenchSetupDraft setup;
    setup.tool = "W07";
    EXPECT_EQ(kindOf(shop.saveSetupDraft(setup).error()), ProblemKind::NotPermitted);
    EXPECT_EQ(kindOf(addUser(shop, "Nora", AccountRole::Lead, leadPin).error()), ProblemKind::NotPermitted);
    EXPECT_EQ(pictureOf(folder_.path()), before) << "not even while it is open";
  }
  EXPECT_EQ(pictureOf(folder_.path()), before);
}

TEST_F(Looking, SeesWhatSomebodyAtWorkHasSaved) {
  auto working = Shop::open(demo_).value();
  ASSERT_TRUE(working.addTool(tool("T-NEW")));
  const auto looking = Shop::open(demo_, Access::Look).value();
  EXPECT_TRUE(looking.tool("T-NEW")) << "though it stands in the journal yet";
}

TEST_F(Looking, IsToldWhenSomebodyWritesMeanwhile) {
  const auto looking = Shop::open(demo_, Access::Look).value();
  ASSERT_TRUE(verifyShop(looking));
  ASSERT_TRUE(Shop::open(demo_)->addTool(tool("T-NEW")));
  const auto proof = verifyShop(looking);
  ASSERT_FALSE(proof) << "a proof of two moments mixed would cry wolf";
  EXPECT_EQ(kindOf(proof.error()), ProblemKind::Unavailable);
  EXPECT_THAT(proof.error().front().accepted, HasSubstr("open it again"));
}

TEST_F(Looking, WorksOnAMediumThatCantBeWritten) {
  const auto place = in("medium");
  ASSERT_TRUE(QDir().mkpath(QString::fromStdString(place)));
  // A mount of its own needs the superuser's rights; without them the folder is shut as far as its permissions do it.
  const bool mounted = ::mount("tmpfs", place.c_str(), "tmpfs", 0, "size=16m") == 0;
  ASSERT_TRUE(QFile::copy(QString::fromStdString(demo_), QString::fromStdString(place + "/demo.st")));
  if (mounted) {
    ASSERT_EQ(::mount("tmpfs", place.c_str(), "tmpfs", MS_REMOUNT | MS_RDONLY, "size=16m"), 0);
  } else {
    ASSERT_EQ(::chmod(place.c_str(), 0555), 0);
  }
  {
    const auto looking = Shop::open(place + "/demo.st", Access::Look);
    EXPECT_TRUE(looking && verifyShop(*looking)->intact());
    // And for work it opens too, to be read, and says so.
    auto working = Shop::open(place + "/demo.st");
    EXPECT_TRUE(working && working->readOnly());
    if (mounted && working) {
      const auto refused = working->addTool(tool("T1"));
      EXPECT_TRUE(!refused && kindOf(refused.error()) == ProblemKind::Unavailable);
    }
  }
  if (mounted) ::umount(place.c_str());
  ::chmod(place.c_str(), 0755);
}

}  // namespace
}  // namespace steadyturn
