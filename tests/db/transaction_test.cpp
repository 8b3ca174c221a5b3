#include <chrono>
#include <stdexcept>

#include "sample_records.h"
#include "shop_fixture.h"

namespace steadyturn {
namespace {

class TransactionTest : public ShopTest {};

TEST_F(TransactionTest, RemembersAFailureAndKeepsNothing) {
  Transaction transaction(shop().database);
  shop().tools.add(bareTool(), stamp);
  EXPECT_THROW(Statement(shop().database, "INSERT INTO no_such_table VALUES (1)").run(), StoreError);
  EXPECT_THROW(transaction.commit(), StoreError);
  EXPECT_FALSE(shop().tools.find("TW-01"));
  EXPECT_EQ(shop().ledger.size(), 0);
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

}  // namespace
}  // namespace steadyturn
