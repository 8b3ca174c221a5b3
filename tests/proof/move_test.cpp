// A shop that moves is the same shop: every row of every table, and a ledger that proves it.
#include <gmock/gmock.h>

#include <QTemporaryDir>
#include <algorithm>
#include <set>

#include "database.h"
#include "shop_copy.h"
#include "shop_keeping.h"
#include "shop_people.h"
#include "signed_depot.h"
#include "statement.h"
#include "test_server.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;

class Move : public testing::Test {
 protected:
  std::string in(const std::string& name) const {
    return folder_.filePath(QString::fromStdString(name)).toStdString();
  }
  QTemporaryDir folder_;
};

std::vector<std::string> rowsOf(Database& database, const std::string& sql) {
  Statement rows(database, sql);
  std::vector<std::string> all;
  rows.run();
  while (rows.next()) {
    std::string row;
    for (int column = 0; column < rows.columns(); ++column) {
      row += rows.isNull(column) ? "NULL" : rows.bytes(column).toHex().toStdString();
      row += ' ';
    }
    all.push_back(row);
  }
  std::ranges::sort(all);
  return all;
}

// The signed depot with what is left that a shop can hold: a recall that is closed, a check being typed, an account.
std::string fullDepot() {
  const auto path = signedDepot().fresh();
  auto shop = Shop::open(path).value();
  const auto tools = shop.tools().value();
  for (const auto& tool : tools) {
    const auto doubts = shop.recall(tool.id);
    if (!doubts || doubts->tightenings.empty() || doubts->closing) continue;
    for (const auto& line : doubts->tightenings) {
      EXPECT_TRUE(shop.decideRecall(tool.id, {.tightening = line.tightening.id,
                                              .action = RecallAction::Retorque,
                                              .reason = "as the list says",
                                              .by = "Nora"}));
    }
    EXPECT_TRUE(shop.closeRecall(tool.id, "Nora", "all seen"));
    CheckDraft typed;
    typed.tool = tool.id;
    typed.points.push_back({.target = "40", .readings = {"40,1"}});
    EXPECT_TRUE(shop.saveDraft(typed));
    BenchSetupDraft runs;
    runs.tool = tool.id;
    runs.readings[0] = {{"40,1", ""}};
    EXPECT_TRUE(shop.saveSetupDraft(runs));
    break;
  }
  EXPECT_TRUE(addUser(shop, "Nora", AccountRole::Lead, "a long passphrase"));
  return path;
}

void expectSameRows(const std::string& one, const std::string& other) {
  auto first = Database::open(one).value();
  auto second = Database::open(other).value();
  for (const std::string table : copiedTables()) {
    const auto rows = rowsOf(first, "SELECT * FROM " + table);
    EXPECT_FALSE(rows.empty()) << "nothing to compare in " << table;
    EXPECT_EQ(rows, rowsOf(second, "SELECT * FROM " + table)) << table;
  }
  const std::string search = "SELECT rowid, fastener, component, assembly, thread FROM fastener_search";
  EXPECT_EQ(rowsOf(first, search), rowsOf(second, search));
}

TEST_F(Move, LeavesNoTableOut) {
  auto shop = Database::open(signedDepot().fresh()).value();
  std::set<std::string> all;
  Statement tables(shop, "SELECT name FROM sqlite_master WHERE type = 'table'");
  tables.run();
  while (tables.next()) all.insert(tables.text(0));
  // The list of migrations is each database's own, and the search is made anew.
  all.erase("schema_migration");
  std::erase_if(all, [](const std::string& name) { return name.starts_with("fastener_search"); });
  const std::set<std::string> copied(copiedTables().begin(), copiedTables().end());
  EXPECT_EQ(copied, all);
}

TEST_F(Move, BringsEveryRow) {
  const auto from = fullDepot();
  std::string to = in("moved.db");
  if (hasTestServer()) {
    const auto server = freshDatabase();
    ASSERT_TRUE(moveShop(from, server));
    const auto there = Shop::open(server).value();
    EXPECT_TRUE(there.onServer());
    EXPECT_EQ(ledgerHead(there)->root, ledgerHead(Shop::open(from).value())->root);
    EXPECT_FALSE(there.findFasteners("drian plug", 5)->empty());
    ASSERT_TRUE(moveShop(server, to));
  } else {
    ASSERT_TRUE(moveShop(from, to));
  }
  expectSameRows(from, to);
  const auto proof = verifyShop(Shop::open(to).value(), signedDepot().outside, {}, signedDepot().trustedKey);
  EXPECT_TRUE(proof->intact());
  EXPECT_GT(proof->signatures, 0);
}

TEST_F(Move, TakesNoDamageAlong) {
  const auto from = signedDepot().fresh();
  {
    auto shop = Database::open(from).value();
    Statement(shop, "DROP TRIGGER check_point_is_not_changed").run();
    Statement(shop, "UPDATE check_point SET mean_deviation = mean_deviation + 1 WHERE check_id = 3").run();
  }
  const auto to = hasTestServer() ? freshDatabase() : in("moved.db");
  const auto moved = moveShop(from, to);
  ASSERT_FALSE(moved);
  EXPECT_EQ(moved.error().front().kind, ProblemKind::Conflict);
  EXPECT_THAT(moved.error().front().found, HasSubstr("check 3"));
  EXPECT_FALSE(Shop::open(to)) << "a damaged shop was left there";
}

TEST_F(Move, TakesNobodysPlace) {
  const auto from = signedDepot().fresh();
  const auto to = hasTestServer() ? freshDatabase() : in("other.db");
  ASSERT_TRUE(Shop::create(to, "Other"));
  const auto moved = moveShop(from, to);
  ASSERT_FALSE(moved);
  EXPECT_EQ(moved.error().front().kind, ProblemKind::CannotCreate);
  EXPECT_EQ(Shop::open(to)->name(), "Other");
}

TEST_F(Move, StopsWithNothingLeft) {
  const auto to = hasTestServer() ? freshDatabase() : in("moved.db");
  const auto moved = moveShop(signedDepot().fresh(), to, [](double part) { return part < 0.5; });
  ASSERT_FALSE(moved);
  EXPECT_EQ(moved.error().front().kind, ProblemKind::Cancelled);
  EXPECT_FALSE(Shop::open(to));
}

TEST_F(Move, ABackupOfAServersShopIsAFileAndComesBack) {
  if (!hasTestServer()) GTEST_SKIP() << "run by tests/with-server";
  const auto server = freshDatabase();
  ASSERT_TRUE(moveShop(signedDepot().fresh(), server));
  const auto shop = Shop::open(server).value();
  const auto kept = backupInto(shop, in("backups"));
  ASSERT_TRUE(kept) << kept.error().front().accepted;
  EXPECT_TRUE(verifyShop(Shop::open(kept->file, Access::Look).value())->intact());
  EXPECT_FALSE(backupInto(shop, in("backups"))->made) << "nothing is new";
  const auto another = freshDatabase();
  ASSERT_TRUE(restoreShop(kept->file, another, false));
  EXPECT_EQ(ledgerHead(Shop::open(another).value())->root, kept->head.root);
  EXPECT_FALSE(restoreShop(kept->file, server, true)) << "a shop on a server is not replaced";
}

}  // namespace
}  // namespace steadyturn
