#include <gtest/gtest.h>

#include <algorithm>

#include "demo_copy.h"
#include "raw_shop.h"
#include "rewritten_log.h"

namespace steadyturn {
namespace {

class Verify : public testing::Test {
 protected:
  std::string path = demoCopies().fresh();

  void change(const std::string& sql) {
    RawShop raw(path);
    ASSERT_TRUE(raw.run(sql)) << sql;
  }
  // The single fault that a change leaves.
  std::string onlyFault() {
    const auto verification = verified(path);
    EXPECT_EQ(verification.faults.size(), 1U) << listed(verification);
    return verification.faults.empty() ? std::string() : verification.faults.front().what;
  }
  // Changes a record and writes its entry and hash anew, as somebody would who knows the program.
  void forge(const std::string& update, std::int64_t entry, const std::string& from, const std::string& to) {
    RawShop raw(path);
    ASSERT_TRUE(raw.run(update));
    const auto which = " WHERE seq = " + std::to_string(entry);
    ASSERT_TRUE(raw.run("UPDATE ledger SET entry = CAST(replace(CAST(entry AS TEXT), '" + from + "', '" + to +
                        "') AS BLOB)" + which));
    makeConsistent(raw);
  }
};

TEST_F(Verify, SaysWhatDiffersAndHow) {
  change("UPDATE tightening SET setting = '99' WHERE id = 7");
  const auto fault = onlyFault();
  EXPECT_NE(fault.find("tightening 7 differs: setting is \"99\", the entry says \""), std::string::npos) << fault;
}

TEST_F(Verify, NamesTheReadingThatDiffers) {
  change(
      "UPDATE check_point SET readings = replace(readings, substr(readings, 3, 1), '9') WHERE check_id = 3 AND "
      "position = 1");
  const auto fault = onlyFault();
  EXPECT_NE(fault.find("check 3 differs: points[1].readings["), std::string::npos) << fault;
}

TEST_F(Verify, NamesARecordThatIsMissing) {
  change("DELETE FROM tightening WHERE id = 7");
  EXPECT_NE(onlyFault().find("tightening 7 is missing"), std::string::npos);
}

TEST_F(Verify, NamesARecordWithoutAnEntry) {
  change(
      "INSERT INTO tightening SELECT 9001, job, date, fastener, fastener_number, tool, setting, unit, seat_checked, "
      "done_by, entry, stages_done, seal_renewed FROM tightening WHERE id = 7");
  EXPECT_NE(onlyFault().find("tightening 9001 has no entry of its own"), std::string::npos);
}

TEST_F(Verify, SeesAPresentStatusThatNoEventGave) {
  change("UPDATE tool SET status = 'in service', status_reason = '' WHERE id = 'W03'");
  EXPECT_NE(onlyFault().find("tool W03 differs: status is \"in service\", the entry says \"retired\""),
            std::string::npos);
}

TEST_F(Verify, SeesAnEntryWhoseColumnsSayOtherwise) {
  change("UPDATE ledger SET who = 'nobody' WHERE seq = 5");
  EXPECT_NE(onlyFault().find("entry 5 of the ledger differs: who is \"nobody\", the entry says \"\""),
            std::string::npos);
}

TEST_F(Verify, SeesAGapInTheLedger) {
  change("DELETE FROM ledger WHERE seq IN (100, 101)");
  const auto verification = verified(path);
  EXPECT_TRUE(std::ranges::any_of(verification.faults, [](const Fault& fault) {
    return fault.entry == 100 && fault.what.find("entries 100 to 101") != std::string::npos;
  })) << listed(verification);
  // The gap, and the two records whose entries it took.
  EXPECT_EQ(verification.faults.size(), 3U) << listed(verification);
}

TEST_F(Verify, SeesASearchThatShowsOtherFasteners) {
  change("UPDATE fastener_search SET component = 'something else' WHERE rowid = 4");
  EXPECT_NE(onlyFault().find("differs in the fastener search"), std::string::npos);
}

TEST_F(Verify, ReadsASettingsNewestEntryOnly) {
  auto shop = Shop::open(path).value();
  auto policy = shop.policy();
  for (const int days : {300, 200, 100}) {
    policy.intervalDays = days;
    ASSERT_TRUE(shop.change(shop.facts(), policy));
  }
  EXPECT_TRUE(verifyShop(shop)->intact()) << listed(*verifyShop(shop));
  change(
      "UPDATE shop_setting SET value = '200', entry = (SELECT seq FROM ledger WHERE kind = 'setting' AND "
      "CAST(entry AS TEXT) LIKE '%interval_days%200%') WHERE name = 'interval_days'");
  const auto verification = verified(path);
  ASSERT_FALSE(verification.intact());
  EXPECT_NE(listed(verification).find("setting interval_days is out of date"), std::string::npos)
      << listed(verification);
}

TEST_F(Verify, KnowsTheBenchsRecords) {
  {
    auto shop = Shop::open(path).value();
    const auto reference = shop.references()->front().id;
    ASSERT_TRUE(shop.setReferenceRange(reference, {.low = 10, .high = 200, .unit = Unit::NewtonMetre}));
    BenchSetupDraft draft;
    draft.tool = "W06";
    draft.reference = reference;
    draft.by = "petra";
    draft.date = shop.today();
    draft.target = writeNumber(shop.planBenchSetup("W06")->target.value);
    draft.unit = shop.planBenchSetup("W06")->target.unit;
    draft.typedSpans[1] = "0.3";
    draft.basis = "the maker's figures";
    const auto recorded = shop.recordBenchSetup(draft);
    ASSERT_TRUE(recorded) << recorded.error().front().field << ": " << recorded.error().front().accepted;
    const auto verification = verifyShop(shop).value();
    EXPECT_TRUE(verification.intact()) << listed(verification);
  }
  change("UPDATE bench_setup SET span_drive = 0.1 WHERE id = 1");
  change("UPDATE reference_range SET high = 2000");
  const auto faults = listed(verified(path));
  EXPECT_NE(faults.find("bench set-up 1 differs: span_drive is \"0.1\", the entry says \"0.3\""), std::string::npos)
      << faults;
  EXPECT_NE(faults.find("high is \"2000\", the entry says \"200\""), std::string::npos) << faults;
}

// A verdict rewritten in the record and in its entry, with a fitting hash: the readings still tell.
TEST_F(Verify, RecomputesWhatWasMadeOfTheReadings) {
  RawShop raw(path);
  const auto check = raw.row(
      "SELECT r.id, r.entry FROM check_record r JOIN check_point p ON p.check_id = r.id WHERE "
      "r.verdict = 'fail' AND p.verdict = 'fail' ORDER BY r.id LIMIT 1");
  forge("UPDATE check_record SET verdict = 'pass' WHERE id = " + *check[0], std::stoll(*check[1]),
        R"(,"verdict":"fail"},"kind")", R"(,"verdict":"pass"},"kind")");
  const auto fault = onlyFault();
  EXPECT_NE(fault.find("check " + *check[0] + ": verdict is pass, its readings give fail"), std::string::npos)
      << fault;
}

// A whole ledger written anew is consistent in itself. Only what somebody outside holds can tell.
TEST_F(Verify, ACheckpointSeesALedgerWrittenAnew) {
  const auto before = ledgerHead(Shop::open(path).value()).value();
  const auto entry = [&] {
    RawShop raw(path);
    return raw.integer("SELECT entry FROM tightening WHERE id = 7");
  }();
  forge(
      "UPDATE tightening SET done_by = 'somebody' WHERE id = 7", entry,
      [&] {
        RawShop raw(path);
        return "\"by\":\"" +
               raw.text("SELECT json_extract(CAST(entry AS TEXT), '$.facts.by') FROM ledger WHERE seq = " +
                        std::to_string(entry)) +
               "\"";
      }(),
      "\"by\":\"somebody\"");
  EXPECT_TRUE(verified(path).intact()) << listed(verified(path));
  const auto verification = verified(path, before);
  ASSERT_EQ(verification.faults.size(), 1U) << listed(verification);
  EXPECT_NE(verification.faults[0].what.find("does not go on from the checkpoint"), std::string::npos);
}

TEST_F(Verify, ACheckpointSeesAnOlderCopyPutBack) {
  Checkpoint later;
  {
    auto shop = Shop::open(path).value();
    const auto earlier = ledgerHead(shop).value();
    ASSERT_TRUE(shop.holdTool("W06", "fell on the floor"));
    later = ledgerHead(shop).value();
    EXPECT_EQ(later.size, earlier.size + 1);
    EXPECT_TRUE(verifyShop(shop, earlier)->intact()) << "what was added since does not matter";
    EXPECT_TRUE(verifyShop(shop, later)->intact());
  }
  path = demoCopies().fresh();
  EXPECT_TRUE(verified(path).intact());
  const auto verification = verified(path, later);
  ASSERT_EQ(verification.faults.size(), 1U);
  EXPECT_NE(verification.faults[0].what.find("an older copy of the shop was put back"), std::string::npos);
}

TEST_F(Verify, EveryEarlierHeadIsABeginning) {
  const auto shop = Shop::open(path).value();
  const auto whole = ledgerHead(shop).value();
  const auto verification = verifyShop(shop).value();
  EXPECT_EQ(verification.head, writeHash(whole.root));
  EXPECT_EQ(static_cast<std::uint64_t>(verification.entries), whole.size);
  EXPECT_TRUE(verifyShop(shop, Checkpoint{.size = 0, .root = sha256("")})->intact());
  EXPECT_FALSE(verifyShop(shop, Checkpoint{.size = 0, .root = sha256("x")})->intact());
}

TEST_F(Verify, StopsWhenAsked) {
  const auto shop = Shop::open(path).value();
  const auto stopped = verifyShop(shop, {}, [](double) { return false; });
  ASSERT_FALSE(stopped);
  EXPECT_EQ(stopped.error().front().kind, ProblemKind::Cancelled);
}

TEST(CheckpointText, IsReadAsItIsWritten) {
  const Checkpoint checkpoint{.size = 42, .root = sha256("abc")};
  const auto read = parseCheckpoint(writeCheckpoint(checkpoint), "--checkpoint");
  ASSERT_TRUE(read);
  EXPECT_EQ(read->size, 42U);
  EXPECT_EQ(read->root, checkpoint.root);
  const auto root = writeHash(checkpoint.root);
  for (const auto& bad :
       std::vector<std::string>{"", "42", "42:", ":" + root, "42:abc", "-1:" + root, "42 :" + root}) {
    const auto refused = parseCheckpoint(bad, "--checkpoint");
    ASSERT_FALSE(refused) << bad;
    EXPECT_EQ(refused.error().front().field, "--checkpoint");
  }
}

}  // namespace
}  // namespace steadyturn
