#include "tree_nodes.h"

#include <gtest/gtest.h>

#include <QFile>
#include <bit>
#include <nlohmann/json.hpp>

#include "demo_copy.h"
#include "ledger.h"

namespace steadyturn {
namespace {

class Nodes : public testing::Test {
 protected:
  void SetUp() override {
    QFile::remove(QString::fromStdString(path));
    database = std::make_unique<Database>(Database::create(path).value());
  }
  void TearDown() override {
    database.reset();
    for (const auto* ending : {"", "-wal", "-shm"}) QFile::remove(QString::fromStdString(path + ending));
  }
  void append(int count) {
    Ledger ledger(*database);
    Transaction transaction(*database);
    for (int i = 0; i < count; ++i) ledger.append({.at = "2026-03-14T09:26:53.589Z", .who = {}}, "setting", Facts(i));
    transaction.commit();
    Statement all(*database, "SELECT leaf FROM ledger ORDER BY seq");
    all.run();
    leaves.clear();
    while (all.next()) leaves.push_back(asHash(all.bytes(0)));
  }
  std::int64_t kept() {
    Statement rows(*database, "SELECT COUNT(*) FROM tree_node");
    rows.run().next();
    return rows.integer(0);
  }
  void run(const char* sql) {
    Transaction transaction(*database);
    Statement(*database, sql).run();
    transaction.commit();
  }

  std::string path = demoCopies().in("nodes.sturn");
  std::unique_ptr<Database> database;
  std::vector<Hash> leaves;
};

TEST_F(Nodes, GiveTheRootOfEverySize) {
  append(600);
  EXPECT_EQ(kept(), 600 / 16 + 600 / 256);
  GrowingTree tree;
  TreeNodes nodes(*database);
  for (std::uint64_t size = 1; size <= leaves.size(); ++size) {
    tree.add(leaves[size - 1]);
    ASSERT_EQ(writeHash(rootOf(nodes.source(), {0, size})), writeHash(tree.root())) << size;
  }
}

TEST_F(Nodes, AreReadByTheLogarithm) {
  append(4111);
  const auto size = static_cast<std::uint64_t>(leaves.size());
  const auto root = rootOf(leaves);
  // Two hashes for each power of two below the size, each folded from at most eight rows: (1 + 2 + 4 + 8) for four.
  const std::uint64_t most = 2 * 15 * (static_cast<std::uint64_t>(std::bit_width(size)) / 4 + 1);
  for (std::uint64_t index = 0; index < size; index += 97) {
    TreeNodes nodes(*database);
    const auto proof = inclusionProof(nodes.source(), size, index);
    ASSERT_TRUE(provesInclusion(proof, leaves[index], index, size, root)) << index;
    EXPECT_LE(nodes.rowsRead(), most) << index;
    TreeNodes again(*database);
    const auto oldRoot = rootOf(std::span(leaves).first(index + 1));
    const auto grown = consistencyProof(again.source(), size, index + 1);
    ASSERT_TRUE(provesConsistency(grown, index + 1, oldRoot, size, root)) << index;
    EXPECT_LE(again.rowsRead(), most) << index;
  }
}

// A shop that an older program made has none at first.
TEST_F(Nodes, AreMadeWhereTheyAreMissing) {
  append(300);
  const auto all = kept();
  run("DELETE FROM tree_node");
  TreeNodes nodes(*database);
  EXPECT_EQ(rootOf(nodes.source(), {0, 300}), rootOf(leaves));
  {
    Ledger ledger(*database);
    Transaction transaction(*database);
    ledger.completeTree();
    transaction.commit();
  }
  EXPECT_EQ(kept(), all);
  run("DELETE FROM tree_node WHERE position > 3");
  append(20);
  EXPECT_EQ(kept(), 320 / 16 + 1);
  EXPECT_EQ(rootOf(nodes.source(), {0, 320}), rootOf(leaves));
}

// A ledger in which somebody made a hole still takes new evidence in; verification tells of the hole.
TEST_F(Nodes, EndBeforeAHole) {
  append(40);
  run("DROP TRIGGER ledger_is_not_removed");
  run("DELETE FROM ledger WHERE seq = 37");
  append(60);
  EXPECT_EQ(kept(), 2);
  TreeNodes nodes(*database);
  EXPECT_THROW(rootOf(nodes.source(), {0, 100}), StoreError);
}

}  // namespace
}  // namespace steadyturn
