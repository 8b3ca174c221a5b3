// What the world does to a file: full disks, damaged bytes.
#include <sys/mount.h>
#include <sys/resource.h>
#include <unistd.h>

#include <csignal>

#include "sample_records.h"
#include "shop_fixture.h"

namespace steadyturn {
namespace {

class Trouble : public ShopTest {
 protected:
  // Adds tools until the engine refuses; says what it said.
  static Problem fill(OpenShop& shop) {
    try {
      Transaction transaction(shop.database);
      for (int count = 0; count < 5000; ++count) {
        auto tool = fullTool();
        tool.id = "FILL-" + std::to_string(count);
        tool.description = std::string(2000, 'x');
        shop.tools.add(tool, stamp);
      }
      transaction.commit();
    } catch (const StoreError& error) {
      return error.problem();
    }
    ADD_FAILURE() << "there was room for all";
    return {};
  }
  static void expectNothingKept(OpenShop& shop) {
    EXPECT_EQ(shop.ledger.size(), 0);
    EXPECT_TRUE(shop.tools.all().empty());
    EXPECT_EQ(shop.count("SELECT integrity_check = 'ok' FROM pragma_integrity_check"), 1);
  }
};

// SQLite's own limit answers as a full disk does (SQLITE_FULL), wherever the tests run.
TEST_F(Trouble, NoRoomLeftInTheFile) {
  Statement(shop().database, "PRAGMA max_page_count = 100").run().next();
  const auto problem = fill(shop());
  EXPECT_EQ(problem.kind, ProblemKind::Unavailable);
  EXPECT_EQ(problem.accepted, "the disk is full: free some space and try again");
  expectNothingKept(shop());
}

// The operating system refuses to let the file grow, in the middle of a transaction that does not fit into memory.
TEST_F(Trouble, TheSystemRefusesToWrite) {
  Statement(shop().database, "PRAGMA cache_size = 10").run().next();
  rlimit before{};
  ASSERT_EQ(getrlimit(RLIMIT_FSIZE, &before), 0);
  const auto handler = std::signal(SIGXFSZ, SIG_IGN);
  rlimit small = before;
  small.rlim_cur = 1'000'000;
  ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &small), 0);
  const auto problem = fill(shop());
  ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &before), 0);
  std::signal(SIGXFSZ, handler);
  EXPECT_EQ(problem.kind, ProblemKind::Unavailable);
  EXPECT_NE(problem.accepted.find("disk"), std::string::npos) << problem.accepted;
  expectNothingKept(shop());
  write([](OpenShop& to) { to.tools.add(bareTool(), stamp); });  // and it goes on
}

TEST_F(Trouble, AFullDisk) {
  const auto disk = in("disk");
  ASSERT_TRUE(QDir().mkpath(QString::fromStdString(disk)));
  if (mount("none", disk.c_str(), "tmpfs", 0, "size=1m") != 0)
    GTEST_SKIP() << "a small disk needs the right to mount one";
  {
    auto made = Database::create(disk + "/shop.sturn");
    EXPECT_TRUE(made) << made.error().front().accepted;
    if (made) {
      OpenShop full(std::move(*made));
      Statement(full.database, "PRAGMA cache_size = 10").run().next();
      EXPECT_EQ(fill(full).accepted, "the disk is full: free some space and try again");
      expectNothingKept(full);
    }
    writeBytes(disk + "/rest", QByteArray(100'000, 'x'));
  }
  EXPECT_EQ(umount(disk.c_str()), 0);
}

TEST_F(Trouble, NothingIsLeftOfAShopThatDidNotFit) {
  const auto disk = in("disk");
  ASSERT_TRUE(QDir().mkpath(QString::fromStdString(disk)));
  if (mount("none", disk.c_str(), "tmpfs", 0, "size=40k") != 0)
    GTEST_SKIP() << "a small disk needs the right to mount one";
  const auto made = Database::create(disk + "/shop.sturn");
  ASSERT_FALSE(made);
  EXPECT_EQ(made.error().front().kind, ProblemKind::CannotCreate);
  EXPECT_EQ(made.error().front().accepted, "the disk is full: free some space and try again");
  EXPECT_TRUE(QDir(QString::fromStdString(disk)).entryList(QDir::Files).isEmpty());
  EXPECT_EQ(umount(disk.c_str()), 0);
}

// Whichever page is spoilt, reading says so or reads the truth; it never crashes and never invents.
TEST_F(Trouble, DamagedPages) {
  write([](OpenShop& to) {
    to.references.add(fullReference(), stamp);
    to.tools.add(fullTool(), stamp);
    for (int count = 0; count < 300; ++count) to.checks.add(fullCheck(), stamp);
  });
  open_.reset();
  const auto whole = bytesOf(in("shop.sturn"));
  constexpr qsizetype pageSize = 4096;
  int refused = 0;
  for (qsizetype page = 1; page < whole.size() / pageSize; page += 3) {
    auto spoilt = whole;
    spoilt.replace(page * pageSize, pageSize, QByteArray(pageSize, '\x5a'));
    const auto path = in("spoilt.sturn");
    writeBytes(path, spoilt);
    auto opened = Database::open(path);
    if (!opened) {
      ++refused;
      EXPECT_EQ(opened.error().front().kind, ProblemKind::Unavailable);
      continue;
    }
    OpenShop damaged(std::move(*opened));
    try {
      for (const auto& check : damaged.checks.ofTool("TW-07")) EXPECT_EQ(check.note, fullCheck().note);
    } catch (const StoreError& error) {
      ++refused;
      EXPECT_EQ(error.problem().kind, ProblemKind::Unavailable);
      EXPECT_NE(error.problem().accepted.find("damaged"), std::string::npos) << error.problem().accepted;
    }
  }
  EXPECT_GT(refused, 3);
}

TEST_F(Trouble, AFileCutShort) {
  write([](OpenShop& to) { to.tools.add(fullTool(), stamp); });
  open_.reset();
  const auto whole = bytesOf(in("shop.sturn"));
  writeBytes(in("short.sturn"), whole.left(whole.size() / 2));
  const auto opened = Database::open(in("short.sturn"));
  ASSERT_FALSE(opened);
  EXPECT_EQ(opened.error().front().kind, ProblemKind::Unavailable);
  EXPECT_NE(opened.error().front().accepted.find("damaged"), std::string::npos) << opened.error().front().accepted;
}

}  // namespace
}  // namespace steadyturn
