// kill -9 at random moments: what was answered is there, nothing half done is seen, and the work goes on.
//
// STEADYTURN_KILLS says how often for each kind of work (8 when it says nothing; 500 is the figure by hand).
#include <fcntl.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <limits>
#include <random>
#include <thread>

#include "crash_shop.h"
#include "shop_keeping.h"
#include "shop_proof.h"

namespace steadyturn {
namespace {

using std::chrono::microseconds;

int kills() {
  const char* wanted = std::getenv("STEADYTURN_KILLS");
  return wanted ? std::atoi(wanted) : 8;
}

struct Victim {
  int answers = 0;
  bool killed = false;
  microseconds lasted{};
};

class Kills : public testing::Test {
 protected:
  std::string in(const std::string& name) const {
    return folder_.filePath(QString::fromStdString(name)).toStdString();
  }
  QStringList files() const { return QDir(folder_.path()).entryList(QDir::Files | QDir::Hidden, QDir::Name); }

  static Victim run(const std::string& work, const std::string& shop, const std::string& argument, microseconds till,
                    int enough = std::numeric_limits<int>::max()) {
    int ends[2];
    if (pipe2(ends, O_CLOEXEC) != 0) return {};
    const auto began = std::chrono::steady_clock::now();
    const pid_t child = fork();
    if (child == 0) {
      dup2(ends[1], STDOUT_FILENO);
      execl(VICTIM, VICTIM, work.c_str(), shop.c_str(), argument.c_str(), nullptr);
      _exit(127);
    }
    close(ends[1]);
    Victim victim;
    int status = 0;
    while (waitpid(child, &status, WNOHANG) == 0) {
      int answers = 0;  // a byte each, waiting in the pipe
      ioctl(ends[0], FIONREAD, &answers);
      if (std::chrono::steady_clock::now() - began >= till || answers >= enough) kill(child, SIGKILL);
      std::this_thread::sleep_for(microseconds(200));
    }
    victim.lasted = std::chrono::duration_cast<microseconds>(std::chrono::steady_clock::now() - began);
    victim.killed = WIFSIGNALED(status);
    if (!victim.killed) {
      EXPECT_EQ(WEXITSTATUS(status), 0) << work;
    }
    char answer = 0;
    while (read(ends[0], &answer, 1) == 1) ++victim.answers;
    close(ends[0]);
    return victim;
  }

  // Runs `work` once to its end to learn how long it takes, then kills it at moments spread over that; `ready` before
  // each, `look` after.
  void killAgainAndAgain(const std::string& work, const std::string& shop, const std::string& argument,
                         const std::function<void()>& ready, const std::function<void(const Victim&)>& look) {
    const auto seed = std::random_device{}();
    SCOPED_TRACE(work + ", seed " + std::to_string(seed));
    std::mt19937 random(seed);
    ready();
    // A save has no end of its own: till some are done.
    const int enough = work == "save" ? 20 : std::numeric_limits<int>::max();
    const auto whole = run(work, shop, argument, std::chrono::minutes(1), enough).lasted;
    std::uniform_int_distribution<std::int64_t> moment(0, whole.count());
    int killed = 0;
    for (int time = 0; time < kills(); ++time) {
      ready();
      const auto victim = run(work, shop, argument, microseconds(moment(random)));
      killed += victim.killed ? 1 : 0;
      look(victim);
      if (HasFatalFailure()) return;
    }
    EXPECT_GT(killed, kills() / 4);
    std::printf("%s: killed %d times of %d\n", work.c_str(), killed, kills());
  }

  void freshShop() {
    for (const auto& file : files()) QFile::remove(folder_.filePath(file));
    auto shop = Shop::create(in("depot.db")).value();
    fill(shop);
  }
  std::size_t checksIn(const std::string& path) {
    const auto shop = Shop::open(path);
    EXPECT_TRUE(shop) << shop.error().front().accepted;
    if (!shop) return 0;
    const auto proof = verifyShop(*shop);
    EXPECT_TRUE(proof && proof->intact());
    return shop->checksOf("T1")->size();
  }

  QTemporaryDir folder_;
};

TEST_F(Kills, WhatWasSavedIsThere) {
  std::size_t before = 0;
  killAgainAndAgain(
      "save", in("depot.db"), "0", [&] { freshShop(); },
      [&](const Victim& victim) {
        const auto now = checksIn(in("depot.db"));
        // The kill may fall between a save and its answer.
        ASSERT_GE(now, static_cast<std::size_t>(victim.answers));
        ASSERT_LE(now, static_cast<std::size_t>(victim.answers) + 1);
        before += now;
      });
  EXPECT_GT(before, 0U) << "the kills fell into the work";
}

TEST_F(Kills, AnImportIsThereWholeOrNotAtAll) {
  constexpr int checks = 400;
  killAgainAndAgain(
      "import", in("depot.db"), in("checks.csv"),
      [&] {
        freshShop();
        writeChecks(in("checks.csv"), checks);
      },
      [&](const Victim& victim) {
        const auto now = checksIn(in("depot.db"));
        ASSERT_TRUE(now == 0 || now == checks) << now;
        if (victim.answers > 0) {
          ASSERT_EQ(now, static_cast<std::size_t>(checks));
        }
        // And it can be done again where it was not done.
        auto shop = Shop::open(in("depot.db")).value();
        ASSERT_EQ(shop.importCsv(TableKind::Checks, in("checks.csv"), {}).has_value(), now == 0);
      });
}

std::vector<std::string> faultsOf(const Shop& shop) {
  const auto verified = verifyShop(shop).value();
  std::vector<std::string> faults;
  for (const auto& fault : verified.faults) faults.push_back(fault.what);
  return faults;
}

TEST_F(Kills, AnUpgradeIsDoneOrStillToDo) {
  // The kept shop's checks hold invented figures, which a verification names; an upgrade in peace names the same.
  const auto kept = folder_.filePath("calm.db");
  ASSERT_TRUE(QFile::copy(STEADYTURN_TEST_DATA "/shops/v1.sqlite", kept));
  QFile::setPermissions(kept, QFile::ReadOwner | QFile::WriteOwner);
  const auto calm = faultsOf(Shop::open(kept.toStdString()).value());
  killAgainAndAgain(
      "open", in("old.db"), "",
      [&] {
        for (const auto& file : files()) QFile::remove(folder_.filePath(file));
        ASSERT_TRUE(QFile::copy(STEADYTURN_TEST_DATA "/shops/v1.sqlite", folder_.filePath("old.db")));
        QFile::setPermissions(folder_.filePath("old.db"), QFile::ReadOwner | QFile::WriteOwner);
      },
      [&](const Victim&) {
        const auto shop = Shop::open(in("old.db"));
        ASSERT_TRUE(shop) << shop.error().front().accepted;
        ASSERT_EQ(faultsOf(*shop), calm);
        ASSERT_EQ(shop->tools()->size(), 2U);
        // Of the copies made before the upgrade, none is a half one.
        for (const auto& file : files()) {
          if (!file.contains(".before-v") || file.contains("-wal") || file.contains("-shm")) continue;
          if (file.endsWith(".unfinished")) continue;
          const auto copy = folder_.filePath("copy.db");
          QFile::remove(copy);
          ASSERT_TRUE(QFile::copy(folder_.filePath(file), copy));
          ASSERT_TRUE(Shop::open(copy.toStdString())) << file.toStdString();
        }
      });
}

TEST_F(Kills, ABackupIsWholeOrNotThere) {
  killAgainAndAgain(
      "backup", in("depot.db"), in("backups"),
      [&] {
        QDir(folder_.filePath("backups")).removeRecursively();
        freshShop();
        writeChecks(in("checks.csv"), 50);
        auto shop = Shop::open(in("depot.db")).value();
        ASSERT_TRUE(shop.importCsv(TableKind::Checks, in("checks.csv"), {}));
      },
      [&](const Victim& victim) {
        const auto made = QDir(folder_.filePath("backups")).entryList({"depot.*.backup"}, QDir::Files);
        if (victim.answers > 0) {
          ASSERT_EQ(made.size(), 1);
        }
        for (const auto& file : made) ASSERT_EQ(checksIn(in("backups/" + file.toStdString())), 50U);
        // And the next one is not kept from its place.
        ASSERT_TRUE(backupInto(Shop::open(in("depot.db")).value(), in("backups")));
        ASSERT_EQ(checksIn(in("depot.db")), 50U);
      });
}

TEST_F(Kills, ARestoreLeavesTheOldShopOrTheNew) {
  killAgainAndAgain(
      "restore", in("depot.db"), in("kept.backup"),
      [&] {
        freshShop();
        {
          auto shop = Shop::open(in("depot.db")).value();
          ASSERT_TRUE(shop.recordCheck(checkOfDay(1)));
          ASSERT_TRUE(backupShop(shop, in("kept.backup")));
          ASSERT_TRUE(shop.recordCheck(checkOfDay(2)));
        }
      },
      [&](const Victim& victim) {
        // Between the two renames the old shop stands beside, under its other name.
        const bool between = !QFile::exists(folder_.filePath("depot.db"));
        const auto now = checksIn(in(between ? "depot.db.before-restore" : "depot.db"));
        ASSERT_TRUE(now == (between ? 2U : victim.answers > 0 ? 1U : now));
        ASSERT_TRUE(now == 1U || now == 2U);
        ASSERT_EQ(checksIn(in("kept.backup")), 1U);
      });
}

}  // namespace
}  // namespace steadyturn
