#include <chrono>
#include <stdexcept>

#include "sample_records.h"
#include "shop_fixture.h"
#include "snapshot.h"

namespace steadyturn {
namespace {

class TransactionTest : public ShopTest {};

TEST_F(TransactionTest, RemembersAFailureAndKeepsNothing) {
  Transaction transaction(shop().database);
  shop().tools.add(bareTool(), stamp);
  EXPECT_THROW(Statement(shop().database, "SELECT 1 FROM no_such_table").run(), StoreError);
  EXPECT_THROW(transaction.commit(), StoreError);
  EXPECT_FALSE(shop().tools.find("TW-01"));
  EXPECT_EQ(shop().ledger.size(), 0);
}

// A file says it at once; a server is asked no later than at the commit.
TEST_F(TransactionTest, AWriteThatFailedIsSaidInItsOwnWordsAndKeepsNothing) {
  try {
    Transaction transaction(shop().database);
    shop().tools.add(bareTool(), stamp);
    Statement(shop().database, "INSERT INTO no_such_table VALUES (1)").run();
    transaction.commit();
    FAIL() << "committed";
  } catch (const StoreError& error) {
    EXPECT_NE(error.problem().accepted.find("no_such_table"), std::string::npos) << error.what();
  }
  EXPECT_FALSE(shop().tools.find("TW-01"));
  EXPECT_EQ(shop().ledger.size(), 0);
}

TEST_F(TransactionTest, AReadSeesWhatTheTransactionWroteBefore) {
  Transaction transaction(shop().database);
  shop().tools.add(bareTool(), stamp);
  Statement add(shop().database, "INSERT INTO shop_setting (name, value, entry) VALUES (?, ?, 1)");
  add.run("a", "'1'; ?");
  add.run("b", "2");
  Statement(shop().database, "UPDATE shop_setting SET value = '3' WHERE name = 'b'").run();
  Statement settings(shop().database, "SELECT value FROM shop_setting WHERE name IN ('a', 'b') ORDER BY name");
  settings.run();
  ASSERT_TRUE(settings.next());
  EXPECT_EQ(settings.text(0), "'1'; ?");
  ASSERT_TRUE(settings.next());
  EXPECT_EQ(settings.text(0), "3");
  EXPECT_FALSE(settings.next());
}

// More rows than a server is told at once, and more calls than it keeps plans for.
TEST_F(TransactionTest, ManyWritesArriveAllAndInOrder) {
  constexpr int many = 5000;
  {
    Transaction transaction(shop().database);
    shop().tools.add(bareTool(), stamp);
    Statement add(shop().database, "INSERT INTO shop_setting (name, value, entry) VALUES (?, ?, 1)");
    for (int i = 0; i < many; ++i) add.run("n" + std::to_string(i), i % 3 == 0 ? "first" : "only");
    for (int i = 0; i < many; i += 3) {
      Statement(shop().database, "UPDATE shop_setting SET value = ? WHERE name = ?")
          .run("last", "n" + std::to_string(i));
    }
    transaction.commit();
  }
  EXPECT_EQ(shop().count("SELECT COUNT(*) FROM shop_setting WHERE name LIKE 'n%' AND value = 'last'"),
            (many + 2) / 3);
  EXPECT_EQ(shop().count("SELECT COUNT(*) FROM shop_setting WHERE name LIKE 'n%' AND value = 'only'"),
            many - (many + 2) / 3);
}

TEST_F(TransactionTest, AFreshOneStartsWithoutTheOldFailure) {
  try {
    Transaction transaction(shop().database);
    Statement(shop().database, "INSERT INTO no_such_table VALUES (1)").run();
  } catch (const StoreError&) {
  }
  write([](OpenShop& to) { to.tools.add(bareTool(), stamp); });
  EXPECT_TRUE(shop().tools.find("TW-01"));
}

TEST_F(TransactionTest, OneAtATime) {
  Transaction transaction(shop().database);
  EXPECT_THROW(Transaction second(shop().database), std::logic_error);
  shop().tools.add(bareTool(), stamp);
  transaction.commit();
  EXPECT_THROW(transaction.commit(), std::logic_error);
}

TEST_F(TransactionTest, ASecondWriterWaitsAndThenSaysWhy) {
  auto other = Database::open(address_);
  ASSERT_TRUE(other);
  Statement::execute(other->connection(), hasTestServer() ? "SET lock_timeout = 200" : "PRAGMA busy_timeout = 200");
  Transaction first(shop().database);
  shop().tools.add(bareTool(), stamp);
  const auto started = std::chrono::steady_clock::now();
  try {
    Transaction second(*other);
    FAIL() << "two writers at once";
  } catch (const StoreError& error) {
    EXPECT_EQ(error.problem().kind, ProblemKind::Unavailable);
    EXPECT_EQ(error.problem().accepted, "another program is writing to the shop: try again");
  }
  EXPECT_GE(std::chrono::steady_clock::now() - started, std::chrono::milliseconds(150));
  first.commit();
  Transaction now(*other);
  now.commit();
}

TEST_F(TransactionTest, AReaderIsNotKeptWaiting) {
  auto other = Database::open(address_);
  ASSERT_TRUE(other);
  Ledger theirs(*other);
  Transaction writing(shop().database);
  shop().tools.add(bareTool(), stamp);
  EXPECT_EQ(theirs.size(), 0);
  writing.commit();
  EXPECT_EQ(theirs.size(), 1);
}

// More rows than a server sends at once; the second statement starts and ends within the first.
TEST_F(TransactionTest, ASnapshotIsReadToItsEndBySeveralSideBySide) {
  constexpr int many = 10000;  // two whole pieces from a server, and nothing behind them
  write([](OpenShop& to) {
    to.tools.add(bareTool(), stamp);
    Statement add(to.database, "INSERT INTO shop_setting (name, value, entry) VALUES (?, ?, 1)");
    for (int i = 0; i < many; ++i) add.run("n" + std::to_string(many + i), std::to_string(i));
  });
  const Snapshot snapshot(shop().database);
  for (const std::string from : {"n10000", "n10001", "n20000"}) {
    Statement outer(shop().database, "SELECT value FROM shop_setting WHERE name >= ? AND name < 'o' ORDER BY name");
    outer.run(from);
    int next = std::stoi(from.substr(1)) - many;
    while (outer.next()) {
      ASSERT_EQ(outer.integer(0), next);
      if (next++ % 4999 != 0) continue;
      Statement inner(shop().database, "SELECT name FROM shop_setting WHERE value = ?");
      ASSERT_TRUE(inner.run(std::to_string(next - 1)).next());
      EXPECT_EQ(inner.text(0), "n" + std::to_string(many + next - 1));
    }
    EXPECT_EQ(next, many);
    EXPECT_FALSE(outer.next());
  }
}

}  // namespace
}  // namespace steadyturn
