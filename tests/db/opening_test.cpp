// Opening a shop is a state machine; here is each way it can go.
#include <sys/stat.h>
#include <unistd.h>

#include <QDir>
#include <QSqlQuery>
#include <QtEndian>
#include <array>

#include "sample_records.h"
#include "shop_fixture.h"

namespace steadyturn {
namespace {

class Opening : public ShopFolder {
 protected:
  std::string makeShop(std::span<const Migration> migrations = sqliteMigrations()) {
    const auto path = in("shop.sturn");
    const auto made = Database::create(path, migrations);
    EXPECT_TRUE(made) << made.error().front().accepted;
    return path;
  }
  // Runs SQL on a file with Qt alone, as any other program would.
  static void runElsewhere(const std::string& path, const QStringList& statements) {
    {
      auto database = QSqlDatabase::addDatabase("QSQLITE", "elsewhere");
      database.setDatabaseName(QString::fromStdString(path));
      ASSERT_TRUE(database.open());
      for (const auto& statement : statements)
        ASSERT_TRUE(QSqlQuery(database).exec(statement)) << statement.toStdString();
    }
    QSqlDatabase::removeDatabase("elsewhere");
  }
  static Problem problemOf(const Result<Database>& result) {
    EXPECT_FALSE(result.has_value());
    if (result) return {};
    EXPECT_EQ(result.error().size(), 1U);
    return result.error().front();
  }
  // Refused for what `words` say, and the file is byte for byte what it was, with nothing new beside it.
  void expectRefusedUntouched(const std::string& path, const std::string& words,
                              std::span<const Migration> migrations = sqliteMigrations()) {
    const auto before = bytesOf(path);
    const auto neighbours = QDir(folder_.path()).entryList(QDir::Files);
    const auto problem = problemOf(Database::open(path, migrations));
    EXPECT_EQ(problem.kind, ProblemKind::Unavailable);
    EXPECT_EQ(problem.found, path);
    EXPECT_NE(problem.accepted.find(words), std::string::npos) << problem.accepted;
    EXPECT_EQ(bytesOf(path), before);
    EXPECT_EQ(QDir(folder_.path()).entryList(QDir::Files), neighbours);
  }
  static std::vector<Migration> withSecond(std::string_view sql) {
    std::vector<Migration> migrations(sqliteMigrations().begin(), sqliteMigrations().end());
    migrations.push_back({static_cast<int>(migrations.size()) + 1, "next_step", sql});
    return migrations;
  }
  const int current_ = static_cast<int>(sqliteMigrations().size());
};

TEST_F(Opening, Created) {
  auto made = Database::create(in("new.sturn"));
  ASSERT_TRUE(made);
  EXPECT_EQ(made->outcome(), OpenOutcome::Created);
  EXPECT_EQ(made->schemaVersion(), current_);
  EXPECT_FALSE(made->readOnly());
  EXPECT_EQ(made->address(), in("new.sturn"));
}

TEST_F(Opening, ItsHabits) {
  auto made = Database::create(in("new.sturn"));
  ASSERT_TRUE(made);
  const auto habit = [&](const std::string& name) {
    Statement pragma(*made, "PRAGMA " + name);
    return pragma.run().next() ? pragma.text(0) : std::string();
  };
  EXPECT_EQ(habit("journal_mode"), "wal");
  EXPECT_EQ(habit("foreign_keys"), "1");
  EXPECT_EQ(habit("synchronous"), "2");  // FULL
  EXPECT_EQ(habit("busy_timeout"), "5000");
  EXPECT_EQ(habit("trusted_schema"), "0");
  EXPECT_EQ(habit("cell_size_check"), "1");
}

TEST_F(Opening, WhatExistsIsNotMadeAgain) {
  const auto path = makeShop();
  const auto before = bytesOf(path);
  EXPECT_EQ(problemOf(Database::create(path)).kind, ProblemKind::CannotCreate);
  EXPECT_EQ(bytesOf(path), before);
  EXPECT_EQ(problemOf(Database::create(folder_.path().toStdString())).kind, ProblemKind::CannotCreate);
}

TEST_F(Opening, NothingIsLeftOfWhatCannotBeMade) {
  EXPECT_EQ(problemOf(Database::create(in("no/such/folder.sturn"))).kind, ProblemKind::CannotCreate);
  EXPECT_EQ(problemOf(Database::create("")).kind, ProblemKind::CannotCreate);
  EXPECT_EQ(problemOf(Database::create(in("bad.sturn"), withSecond("CREATE NONSENSE"))).kind,
            ProblemKind::CannotCreate);
  EXPECT_TRUE(QDir(folder_.path()).entryList(QDir::Files).isEmpty());
}

TEST_F(Opening, UpToDate) {
  const auto path = makeShop();
  const auto opened = Database::open(path);
  ASSERT_TRUE(opened) << opened.error().front().accepted;
  EXPECT_EQ(opened->outcome(), OpenOutcome::UpToDate);
  EXPECT_EQ(opened->schemaVersion(), current_);
}

TEST_F(Opening, ANameWithEverySign) {
  const auto path = in("50% of #1? a:b & c's \xC3\xA9.sturn");
  ASSERT_TRUE(Database::create(path));
  EXPECT_TRUE(Database::open(path));
}

TEST_F(Opening, UpgradedWithACopyOfWhatItWas) {
  const auto path = makeShop();
  {
    OpenShop shop(std::move(*Database::open(path)));
    Transaction transaction(shop.database);
    shop.tools.add(bareTool(), stamp);
    transaction.commit();
  }
  const auto next = withSecond("CREATE TABLE extra (a TEXT); INSERT INTO extra VALUES ('x');");
  {
    auto upgraded = Database::open(path, next);
    ASSERT_TRUE(upgraded) << upgraded.error().front().accepted;
    EXPECT_EQ(upgraded->outcome(), OpenOutcome::Upgraded);
    EXPECT_EQ(upgraded->schemaVersion(), current_ + 1);
    EXPECT_EQ(upgraded->copyBeforeUpgrade(), path + ".before-v" + std::to_string(current_ + 1));
    Statement extra(*upgraded, "SELECT a FROM extra");
    EXPECT_TRUE(extra.run().next());
  }
  EXPECT_EQ(Database::open(path, next)->outcome(), OpenOutcome::UpToDate);
  // The copy is the shop as it was: this program's own version opens it and finds the tool.
  auto copy = Database::open(path + ".before-v" + std::to_string(current_ + 1));
  ASSERT_TRUE(copy) << copy.error().front().accepted;
  OpenShop old(std::move(*copy));
  EXPECT_TRUE(old.tools.find("TW-01"));
}

TEST_F(Opening, AnOlderCopyIsNotReplaced) {
  const auto path = makeShop();
  const auto copy = path + ".before-v" + std::to_string(current_ + 1);
  writeBytes(copy, "precious");
  const auto upgraded = Database::open(path, withSecond("CREATE TABLE extra (a TEXT)"));
  ASSERT_TRUE(upgraded);
  EXPECT_EQ(upgraded->copyBeforeUpgrade(), copy + "-2");
  EXPECT_EQ(bytesOf(copy), "precious");
}

TEST_F(Opening, AFailedStepLeavesTheShopAtTheOneBefore) {
  const auto path = makeShop();
  auto steps = withSecond("CREATE TABLE good (a TEXT)");
  steps.push_back({current_ + 2, "breaks", "CREATE TABLE half (a TEXT); INSERT INTO no_such_table VALUES (1)"});
  const auto problem = problemOf(Database::open(path, steps));
  EXPECT_EQ(problem.kind, ProblemKind::Unavailable);
  EXPECT_NE(problem.accepted.find("breaks"), std::string::npos) << problem.accepted;
  EXPECT_NE(problem.accepted.find("stays at version " + std::to_string(current_ + 1)), std::string::npos)
      << problem.accepted;
  steps.pop_back();
  auto before = Database::open(path, steps);
  ASSERT_TRUE(before) << before.error().front().accepted;
  EXPECT_EQ(before->outcome(), OpenOutcome::UpToDate);
  Statement half(*before, "SELECT COUNT(*) FROM sqlite_master WHERE name = 'half'");
  half.run().next();
  EXPECT_EQ(half.integer(0), 0);
}

TEST_F(Opening, TooNewIsRefusedUntouched) {
  const auto path = makeShop(withSecond("CREATE TABLE extra (a TEXT)"));
  expectRefusedUntouched(path, "a newer program");
}

TEST_F(Opening, AStepThatDiffersIsRefused) {
  const auto path = makeShop(withSecond("CREATE TABLE extra (a TEXT)"));
  const auto problem = problemOf(Database::open(path, withSecond("CREATE TABLE extra (b TEXT)")));
  EXPECT_EQ(problem.kind, ProblemKind::Unavailable);
  EXPECT_NE(problem.accepted.find("next_step"), std::string::npos) << problem.accepted;
}

// FIPS 180-4, its example "abc".
TEST_F(Opening, AStepIsKnownByItsSha256) {
  EXPECT_EQ(checksum({1, "x", "abc"}), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
}

TEST_F(Opening, AGapInTheListOfStepsIsRefused) {
  const auto path = makeShop(withSecond("CREATE TABLE extra (a TEXT)"));
  runElsewhere(path, {"DELETE FROM schema_migration WHERE version = 1"});
  const auto problem = problemOf(Database::open(path, withSecond("CREATE TABLE extra (a TEXT)")));
  EXPECT_NE(problem.accepted.find("step 1"), std::string::npos) << problem.accepted;
}

TEST_F(Opening, MissingIsSaidSo) {
  const auto problem = problemOf(Database::open(in("nowhere.sturn")));
  EXPECT_EQ(problem.kind, ProblemKind::Unavailable);
  EXPECT_NE(problem.accepted.find("nothing is there"), std::string::npos) << problem.accepted;
  EXPECT_FALSE(QFile::exists(QString::fromStdString(in("nowhere.sturn"))));
}

TEST_F(Opening, WhatIsNoShopIsRefusedUntouched) {
  writeBytes(in("text"), "torque,unit\n20,N.m\n" + QByteArray(5000, 'x'));
  expectRefusedUntouched(in("text"), "not a database");
  writeBytes(in("short"), "hi");
  expectRefusedUntouched(in("short"), "not a database");
  writeBytes(in("empty"), "");
  expectRefusedUntouched(in("empty"), "empty");
  runElsewhere(in("foreign"), {"CREATE TABLE recipes (name TEXT)"});
  expectRefusedUntouched(in("foreign"), "another program");
  const auto problem = problemOf(Database::open(folder_.path().toStdString()));
  EXPECT_EQ(problem.kind, ProblemKind::Unavailable);
  EXPECT_NE(problem.accepted.find("directory"), std::string::npos);
  EXPECT_NE(problemOf(Database::open("/dev/null")).accepted.find("regular file"), std::string::npos);
}

// In a child process that has no more rights than an ordinary user; ends it with 0 when `holds`.
template <typename Condition>
[[noreturn]] void asOrdinaryUser(Condition&& holds) {
  constexpr uid_t nobody = 65534;
  if (geteuid() == 0 && setresuid(nobody, nobody, nobody) != 0) _exit(2);
  _exit(holds() ? 0 : 1);
}

class ReadOnly : public Opening {
 protected:
  void permit(mode_t folder, mode_t file) {
    ASSERT_EQ(chmod(in("shop.sturn").c_str(), file), 0);
    ASSERT_EQ(chmod(folder_.path().toLocal8Bit().constData(), folder), 0);
  }
  void TearDown() override { chmod(folder_.path().toLocal8Bit().constData(), 0700); }
  bool readsButDoesNotWrite() {
    auto opened = Database::open(in("shop.sturn"));
    if (!opened) {
      fprintf(stderr, "%s\n", opened.error().front().accepted.c_str());
      return false;
    }
    OpenShop shop(std::move(*opened));
    if (!shop.database.readOnly() || !shop.tools.find("TW-01")) return false;
    try {
      Transaction transaction(shop.database);
      shop.tools.add(fullTool(), stamp);
      transaction.commit();
      return false;
    } catch (const StoreError& error) {
      fprintf(stderr, "%s\n", error.problem().accepted.c_str());
      return error.problem().accepted.find("can't be written") != std::string::npos;
    }
  }
  void SetUp() override {
    auto made = Database::create(in("shop.sturn"));
    ASSERT_TRUE(made);
    OpenShop shop(std::move(*made));
    Transaction transaction(shop.database);
    shop.tools.add(bareTool(), stamp);
    transaction.commit();
  }
};

TEST_F(ReadOnly, AFolderThatCannotBeWritten) {
  permit(0555, 0644);
  EXPECT_EXIT(asOrdinaryUser([&] { return readsButDoesNotWrite(); }), testing::ExitedWithCode(0), "");
}

TEST_F(ReadOnly, AFileThatCannotBeWritten) {
  permit(0777, 0444);
  EXPECT_EXIT(asOrdinaryUser([&] { return readsButDoesNotWrite(); }), testing::ExitedWithCode(0), "");
}

TEST_F(ReadOnly, AFileThatCannotBeRead) {
  permit(0755, 0000);
  EXPECT_EXIT(asOrdinaryUser([&] {
                return problemOf(Database::open(in("shop.sturn"))).accepted ==
                       "a shop's file that this user may read";
              }),
              testing::ExitedWithCode(0), "");
}

TEST_F(ReadOnly, AnUpgradeWantsAFolderThatCanBeWritten) {
  permit(0555, 0444);
  EXPECT_EXIT(asOrdinaryUser([&] {
                const auto problem =
                    problemOf(Database::open(in("shop.sturn"), withSecond("CREATE TABLE extra (a TEXT)")));
                return problem.kind == ProblemKind::Unavailable &&
                       problem.accepted.find("would be brought") != std::string::npos;
              }),
              testing::ExitedWithCode(0), "");
}

// A kill while the journal is written back: page 1 tells already of pages that the file has not got yet. SQLite's
// file format, 1.3.7: the size in pages at byte 28, trusted where bytes 24 and 92 agree.
TEST_F(Opening, AJournalHalfWrittenBackIsNoDamage) {
  const auto path = makeShop();
  const auto killed = in("killed.sturn");
  {
    auto working = Database::open(path).value();
    Transaction transaction(working);
    Statement insert(working, "INSERT INTO fastener_synonym (phrase, meaning) VALUES (?, ?)");
    for (int i = 0; i < 500; ++i) insert.run(std::to_string(i) + std::string(200, 'x'), "drain plug");
    transaction.commit();
    writeBytes(killed, bytesOf(path));
    writeBytes(killed + "-wal", bytesOf(path + "-wal"));
  }
  auto bytes = bytesOf(killed);
  const auto pages = qFromBigEndian<quint32>(bytes.constData() + 28);
  qToBigEndian<quint32>(pages + 50, bytes.data() + 28);
  writeBytes(killed, bytes);
  auto opened = Database::open(killed);
  ASSERT_TRUE(opened) << opened.error().front().accepted;
  Statement count(*opened, "SELECT COUNT(*) FROM fastener_synonym WHERE length(phrase) > 200");
  ASSERT_TRUE(count.run().next());
  EXPECT_EQ(count.integer(0), 500);
}

TEST_F(ReadOnly, NothingIsMadeInAFolderThatCannotBeWritten) {
  permit(0555, 0644);
  EXPECT_EXIT(asOrdinaryUser(
                  [&] { return problemOf(Database::create(in("other.sturn"))).kind == ProblemKind::CannotCreate; }),
              testing::ExitedWithCode(0), "");
}

}  // namespace
}  // namespace steadyturn
