// Shops made by released versions open in this one, with all that was in them (keep_shop.cpp says what that is).
#include "draft_table.h"
#include "sample_records.h"
#include "shop_fixture.h"

namespace steadyturn {
namespace {

class KeptShop : public ShopFolder, public testing::WithParamInterface<const char*> {};

TEST_P(KeptShop, OpensWithAllThatWasInIt) {
  const auto path = in("shop.sturn");
  const auto kept = std::string(STEADYTURN_TEST_DATA "/shops/") + GetParam();
  ASSERT_TRUE(QFile::copy(QString::fromStdString(kept), QString::fromStdString(path))) << kept;
  QFile::setPermissions(QString::fromStdString(path), QFile::ReadOwner | QFile::WriteOwner);
  auto opened = Database::open(path);
  ASSERT_TRUE(opened) << opened.error().front().accepted;
  EXPECT_EQ(opened->schemaVersion(), static_cast<int>(sqliteMigrations().size()));
  OpenShop shop(std::move(*opened));
  EXPECT_EQ(shop.shop.setting("name"), "Depot");
  EXPECT_EQ(shop.tools.all().size(), 2U);
  EXPECT_EQ(shop.tools.find("TW-07")->status, ToolStatus::InService);
  EXPECT_EQ(shop.references.find("REF-1")->errorPercent, -0.05);
  EXPECT_EQ(shop.fasteners.search("pere", 9).at(0).partLimit, 21.5);
  EXPECT_EQ(shop.checks.ofTool("TW-07").at(0).correctedBy, 2);
  EXPECT_EQ(shop.checks.find(2)->points.at(0).readings, fullCheck().points.at(0).readings);
  EXPECT_EQ(shop.checks.allSummaries().size(), 3U);
  EXPECT_EQ(shop.tightenings.all().size(), 2U);
  EXPECT_EQ(shop.ledger.size(), 14);
  // What came later says nothing about it: stages, approvals, sheets. The words of the search are known all the same.
  const bool knewStages = std::string(GetParam()) >= "v3";
  EXPECT_EQ(shop.fasteners.find("SWEEPER-3-OIL")->stages, knewStages ? fullFastener().stages : TighteningStages());
  EXPECT_FALSE(shop.fasteners.find("SWEEPER-3-OIL")->released());
  EXPECT_EQ(shop.fasteners.search("huosing", 9).at(0).id, "SWEEPER-3-OIL");
  // What was being typed is typed on.
  const auto drafts = DraftTable(shop.database).all(DraftOf::Check);
  EXPECT_EQ(drafts.size(), std::string(GetParam()) >= "v6" ? 1U : 0U);
  for (const auto& draft : drafts) EXPECT_EQ(draft.tool, "TW-07");
  // And its ledger goes on.
  Transaction transaction(shop.database);
  shop.checks.add(bareCheck(), stamp);
  transaction.commit();
  EXPECT_EQ(shop.ledger.size(), 15);
}

INSTANTIATE_TEST_SUITE_P(OfEveryVersion, KeptShop,
                         testing::Values("v1.sqlite", "v2.sqlite", "v3.sqlite", "v4.sqlite", "v5.sqlite",
                                         "v6.sqlite"));

}  // namespace
}  // namespace steadyturn
