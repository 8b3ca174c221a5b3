// Evidence is added, never changed: asked of the engine itself, past the program.
#include <array>

#include "account_table.h"
#include "approval_table.h"
#include "issue_table.h"
#include "job_table.h"
#include "sample_records.h"
#include "shop_fixture.h"
#include "signing_table.h"

namespace steadyturn {
namespace {

class Evidence : public ShopTest {
 protected:
  void SetUp() override {
    ShopTest::SetUp();
    write([](OpenShop& to) {
      to.tools.add(fullTool(), stamp);
      to.tools.setStatus("TW-07", ToolStatus::InService, "looked at", day(2026, 1, 2), stamp);
      to.references.add(fullReference(), stamp);
      to.fasteners.add(fullFastener(), stamp);
      ApprovalTable(to.database, to.ledger).add(fullFastener(), "petra", day(2026, 1, 2), stamp);
      JobTable jobs(to.database, to.ledger);
      jobs.setService({.name = "oil", .fasteners = {fullFastener().id}}, stamp);
      JobEvent opened;
      opened.job = "J-2026-099";
      opened.date = day(2026, 1, 2);
      jobs.add(opened, stamp);
      to.checks.add(fullCheck(), stamp);
      to.tightenings.add(fullTightening(), stamp);
      AccountTable(to.database, to.ledger)
          .add({.account = "petra", .change = AccountChange::Added, .role = AccountRole::Lead, .secretHash = "x"},
               stamp);
      to.shop.rememberFile("checks", "ab12", 1, stamp);
      SigningTable signing(to.database, to.ledger);
      SigningKey key;
      key.id = "0123456789abcdef";
      signing.addKey(key, {}, stamp);
      SignedCheckpoint checkpoint;
      checkpoint.key = key.id;
      signing.add(checkpoint, stamp);
      IssueTable(to.database, to.ledger).add({.subject = "register", .id = {}, .file = "pdf", .sha256 = "ab"}, stamp);
    });
  }
};

struct Guarded {
  const char* table;
  const char* column;
};
constexpr std::array guarded{Guarded{"ledger", "entry"},
                             Guarded{"imported_file", "row_count"},
                             Guarded{"tool_status_event", "reason"},
                             Guarded{"fastener_revision", "target"},
                             Guarded{"fastener_approval", "approved_by"},
                             Guarded{"service_list", "fasteners"},
                             Guarded{"job_event", "note"},
                             Guarded{"account_event", "role"},
                             Guarded{"check_record", "note"},
                             Guarded{"check_point", "readings"},
                             Guarded{"tightening", "setting"},
                             Guarded{"signing_key", "public_key"},
                             Guarded{"signed_checkpoint", "root"},
                             Guarded{"issued_report", "sha256"}};

TEST_F(Evidence, RefusesUpdateDeleteAndReplace) {
  for (const auto& [table, column] : guarded) {
    const std::string name(table);
    ASSERT_GT(shop().count("SELECT COUNT(*) FROM " + name), 0) << name;
    EXPECT_NE(refusal("UPDATE " + name + " SET " + column + " = " + column).find("never changed"), std::string::npos)
        << name;
    EXPECT_NE(refusal("DELETE FROM " + name).find("never removed"), std::string::npos) << name;
    if (hasTestServer()) {
      EXPECT_NE(refusal("TRUNCATE " + name + " CASCADE").find("never removed"), std::string::npos) << name;
      EXPECT_NE(refusalToProgram("UPDATE " + name + " SET " + column + " = " + column).find("permission denied"),
                std::string::npos)
          << name;
      for (const auto* sql : {"DELETE FROM %1", "TRUNCATE %1", "DROP TABLE %1", "ALTER TABLE %1 DISABLE TRIGGER ALL",
                              "DROP TRIGGER rows_stay ON %1"}) {
        const auto refused = refusalToProgram(QString(sql).arg(table).toStdString());
        EXPECT_TRUE(refused.find("permission denied") != std::string::npos ||
                    refused.find("must be owner") != std::string::npos)
            << sql << ' ' << name << ": " << refused;
      }
      continue;
    }
    // REPLACE removes the old row without asking a DELETE trigger.
    const auto replaced = refusal("INSERT OR REPLACE INTO " + name + " SELECT * FROM " + name + " LIMIT 1");
    EXPECT_TRUE(replaced.find("never replaced") != std::string::npos ||
                replaced.find("at its end") != std::string::npos)
        << name << ": " << replaced;
  }
}

TEST_F(Evidence, ReplacementByAnotherKeyIsRefusedToo) {
  if (hasTestServer()) GTEST_SKIP() << "PostgreSQL has no REPLACE";
  EXPECT_NE(
      refusal(
          "INSERT OR REPLACE INTO fastener_revision SELECT id + 1, fastener, number, assembly, component, thread, "
          "property_class, part_material, drive, unit, 99, low, high, angle_deg, part_limit, seal, renew, "
          "lubrication, seat_check, source, revision, revision_reason, entry, stages, sequence, limit_basis, "
          "entered_by FROM "
          "fastener_revision")
          .find("never replaced"),
      std::string::npos);
}

TEST_F(Evidence, TheLedgerTakesOnlyTheNextNumber) {
  const auto next = shop().ledger.size() + 1;
  for (const auto seq : {std::int64_t{1}, next - 1, next + 1, std::int64_t{-1}}) {
    const auto refused = refusal("INSERT INTO ledger SELECT " + std::to_string(seq) +
                                 ", at, who, kind, entry, leaf FROM ledger LIMIT 1");
    EXPECT_NE(refused.find("at its end"), std::string::npos) << seq << ": " << refused;
  }
}

TEST_F(Evidence, ReferencesAreKept) {
  EXPECT_NE(refusal("DELETE FROM tool").find(hasTestServer() ? "foreign key" : "FOREIGN KEY"), std::string::npos);
  auto stray = fullCheck();
  stray.tool = "nobody's";
  EXPECT_THROW(write([&](OpenShop& to) { to.checks.add(stray, stamp); }), StoreError);
}

TEST_F(Evidence, ACheckIsCorrectedOnce) {
  const auto first = shop().checks.ofTool("TW-07").at(0).id;
  auto correction = fullCheck();
  correction.corrects = first;
  write([&](OpenShop& to) { to.checks.add(correction, stamp); });
  EXPECT_THROW(write([&](OpenShop& to) { to.checks.add(correction, stamp); }), StoreError);
}

}  // namespace
}  // namespace steadyturn
