// Drafts, bench set-ups and references' ranges: read back as written; what is evidence stays.
#include "bench_setup_table.h"
#include "draft_table.h"
#include "sample_records.h"
#include "shop_fixture.h"

namespace steadyturn {
namespace {

BenchSetup fullSetup() {
  BenchSetup setup;
  setup.model = modelOf(fullTool());
  setup.date = day(2026, 2, 3);
  setup.by = "Núria";
  setup.reference = "REF-1";
  setup.target = {20.1, Unit::PoundForceFoot};
  setup.readings[static_cast<std::size_t>(SetupRun::Reproducibility)] = {{"20.10", "20.2"}, {"19,9", "20"}};
  setup.spans = {.reproducibility = 0.75, .drive = {}, .interface = 1.0 / 3, .loadingPoint = {}};
  setup.basis = "maker's \"sheet\" 7";
  setup.note = "after\nthe move";
  return setup;
}

class BenchTables : public ShopTest {
 protected:
  void SetUp() override {
    ShopTest::SetUp();
    write([](OpenShop& to) {
      to.tools.add(fullTool(), stamp);
      to.tools.add(bareTool(), stamp);
      to.references.add(fullReference(), stamp);
    });
    bench_ = std::make_unique<BenchSetupTable>(shop().database, shop().ledger);
  }
  void TearDown() override { bench_.reset(); }

  std::int64_t add(const BenchSetup& setup) {
    std::int64_t id = 0;
    write([&](OpenShop&) { id = bench_->add(setup, stamp); });
    return id;
  }
  std::unique_ptr<BenchSetupTable> bench_;
};

TEST_F(BenchTables, ASetupComesBackAsWritten) {
  const auto setup = fullSetup();
  EXPECT_EQ(add(setup), 1);
  const auto kept = bench_->all().at(0);
  EXPECT_EQ(kept.id, 1);
  EXPECT_EQ(kept.model, setup.model);
  EXPECT_EQ(kept.date, setup.date);
  EXPECT_EQ(kept.by, setup.by);
  EXPECT_EQ(kept.reference, setup.reference);
  EXPECT_EQ(kept.target, setup.target);
  EXPECT_EQ(kept.readings, setup.readings);
  EXPECT_EQ(kept.spans.reproducibility, setup.spans.reproducibility);
  EXPECT_EQ(kept.spans.drive, std::nullopt);
  EXPECT_EQ(kept.spans.interface, setup.spans.interface);
  EXPECT_EQ(kept.basis, setup.basis);
  EXPECT_EQ(kept.note, setup.note);
  const auto entry = shop().lastEntry();
  EXPECT_NE(entry.find(R"("kind":"bench_setup")"), std::string::npos);
  EXPECT_NE(entry.find(R"("readings":{"reproducibility":[["20.10","20.2"],["19,9","20"]]})"), std::string::npos);
}

TEST_F(BenchTables, SetupsOfAModelTheNewestFirst) {
  auto setup = fullSetup();
  add(setup);
  setup.date = day(2026, 2, 1);
  setup.reference.clear();
  add(setup);
  setup.date = day(2026, 2, 3);
  add(setup);
  setup.model = modelOf(bareTool());
  add(setup);
  const auto own = bench_->ofModel(modelOf(fullTool()));
  ASSERT_EQ(own.size(), 3u);
  EXPECT_EQ(own[0].id, 3);
  EXPECT_EQ(own[1].id, 1);
  EXPECT_EQ(own[2].id, 2);
  EXPECT_EQ(own[2].reference, "");
  EXPECT_EQ(bench_->all().size(), 4u);
  auto wider = modelOf(fullTool());
  wider.maximum.value = 151;
  EXPECT_TRUE(bench_->ofModel(wider).empty());
}

TEST_F(BenchTables, TheNewestRangeCountsAndBothStay) {
  EXPECT_EQ(bench_->rangeOf("REF-1"), std::nullopt);
  const ReferenceRange first{.low = 2, .high = 200, .unit = Unit::NewtonMetre};
  const ReferenceRange second{.low = 1.5, .high = 150, .unit = Unit::PoundForceFoot};
  write([&](OpenShop&) { bench_->setRange("REF-1", first, stamp); });
  write([&](OpenShop&) { bench_->setRange("REF-1", second, stamp); });
  EXPECT_EQ(bench_->rangeOf("REF-1"), second);
  EXPECT_EQ(shop().count("SELECT COUNT(*) FROM reference_range"), 2);
}

TEST_F(BenchTables, EvidenceIsAddedAndStays) {
  add(fullSetup());
  write([&](OpenShop&) { bench_->setRange("REF-1", {.low = 2, .high = 20, .unit = Unit::NewtonMetre}, stamp); });
  for (const std::string table : {"bench_setup", "reference_range"}) {
    EXPECT_NE(refusal("UPDATE " + table + " SET unit = unit").find("never changed"), std::string::npos) << table;
    EXPECT_NE(refusal("DELETE FROM " + table).find("never removed"), std::string::npos) << table;
    if (hasTestServer()) continue;  // it has no REPLACE
    EXPECT_NE(refusal("INSERT OR REPLACE INTO " + table + " SELECT * FROM " + table).find("never replaced"),
              std::string::npos)
        << table;
  }
}

TEST_F(BenchTables, ADraftIsReplacedAndLeavesNoEntry) {
  DraftTable drafts(shop().database);
  const auto entries = shop().ledger.size();
  const auto save = [&](const char* tool, DraftOf what, const char* draft, const char* savedAt) {
    write([&](OpenShop&) { drafts.save({.tool = tool, .what = what, .draft = draft, .savedAt = savedAt}); });
  };
  save("TW-01", DraftOf::Check, "{1}", "2026-03-14T09:00:00.000Z");
  save("TW-07", DraftOf::Check, "{2}", "2026-03-14T09:00:01.000Z");
  save("TW-01", DraftOf::Check, "{3}", "2026-03-14T09:00:02.000Z");
  save("TW-01", DraftOf::Setup, "{4}", "2026-03-14T09:00:03.000Z");
  const auto all = drafts.all(DraftOf::Check);
  ASSERT_EQ(all.size(), 2u);
  EXPECT_EQ(all[0].tool, "TW-01");
  EXPECT_EQ(all[0].draft, "{3}");
  EXPECT_EQ(all[1].draft, "{2}");
  write([&](OpenShop&) { drafts.remove("TW-01", DraftOf::Check); });
  EXPECT_EQ(drafts.all(DraftOf::Check).size(), 1u);
  ASSERT_EQ(drafts.all(DraftOf::Setup).size(), 1u);
  EXPECT_EQ(drafts.all(DraftOf::Setup).front().draft, "{4}");
  EXPECT_EQ(shop().ledger.size(), entries);
  EXPECT_THROW(save("nobody's", DraftOf::Check, "{}", "now"), StoreError);
}

}  // namespace
}  // namespace steadyturn
