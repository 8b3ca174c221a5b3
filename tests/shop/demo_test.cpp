// The demo depot is what a new user sees first: it must be the same everywhere and hold what its description
// promises.
#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <algorithm>
#include <fstream>
#include <sstream>

#include "shop.h"

namespace steadyturn {
namespace {

class Demo : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    folder = std::make_unique<QTemporaryDir>();
    auto made = Shop::createDemo(folder->filePath("demo.sqlite").toStdString());
    ASSERT_TRUE(made) << made.error().front().accepted;
    shop = std::make_unique<Shop>(std::move(*made));
  }
  static void TearDownTestSuite() {
    shop.reset();
    folder.reset();
  }

  static ToolOverview standing(const std::string& tool) {
    const auto rows = shop->overview(shop->today()).value();
    return *std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.tool.id == tool; });
  }

  static std::string exported(const Shop& from, TableKind kind) {
    std::ostringstream out;
    EXPECT_TRUE(from.exportCsv(kind, out));
    return out.str();
  }

  static inline std::unique_ptr<QTemporaryDir> folder;
  static inline std::unique_ptr<Shop> shop;
};

TEST_F(Demo, HoldsADepotOfTheSizePromised) {
  EXPECT_EQ(shop->tools()->size(), 24U);
  EXPECT_EQ(shop->references()->size(), 3U);
  EXPECT_EQ(shop->fasteners()->size(), 80U);
  const auto tightenings = exported(*shop, TableKind::Tightenings);
  EXPECT_EQ(std::count(tightenings.begin(), tightenings.end(), '\n'), 301);  // a header and 300 rows
}

TEST_F(Demo, IsTheSameEveryTime) {
  QTemporaryDir elsewhere;
  auto again = Shop::createDemo(elsewhere.filePath("again.sqlite").toStdString());
  ASSERT_TRUE(again);
  for (const auto kind :
       {TableKind::Tools, TableKind::References, TableKind::Fasteners, TableKind::Checks, TableKind::Tightenings}) {
    EXPECT_EQ(exported(*shop, kind), exported(*again, kind)) << writeTableKind(kind);
  }
}

TEST_F(Demo, HasAWrenchOfEachSort) {
  EXPECT_EQ(standing("W07").state, DriftState::Leaving) << "drifts towards its limit";
  EXPECT_EQ(standing("W07").standing, Standing::Leaving);
  EXPECT_EQ(standing("W15").standing, Standing::Overdue);
  EXPECT_EQ(standing("W24").standing, Standing::NeverChecked);
  EXPECT_EQ(standing("W03").standing, Standing::Retired);
  EXPECT_EQ(standing("W19").standing, Standing::Held);
  EXPECT_EQ(standing("W22").state, DriftState::Unknown) << "a single check tells no drift";
  EXPECT_EQ(shop->checksOf("W22")->size(), 1U);
  EXPECT_EQ(standing("W06").standing, Standing::Ready);
}

TEST_F(Demo, OneWrenchFailedAsFoundAndWasAdjusted) {
  const auto checks = shop->checksOf("W11").value();
  const auto failed =
      std::find_if(checks.begin(), checks.end(), [](const Check& one) { return one.verdict == Verdict::Fail; });
  ASSERT_NE(failed, checks.end());
  EXPECT_EQ(failed->phase, Phase::AsFound);
  const auto after = std::next(failed);
  ASSERT_NE(after, checks.end());
  EXPECT_EQ(after->phase, Phase::AsLeft);
  EXPECT_EQ(after->date, failed->date);
  EXPECT_EQ(after->verdict, Verdict::Pass);
}

TEST_F(Demo, AFailedCheckPutsJobsInDoubt) {
  const auto list = shop->recall("W11").value();
  ASSERT_TRUE(list.foundBad);
  ASSERT_TRUE(list.lastGood);
  ASSERT_FALSE(list.tightenings.empty());
  for (const auto& entry : list.tightenings) {
    EXPECT_GE(entry.tightening.date, *list.lastGood);
    EXPECT_LE(entry.tightening.date, *list.foundBad);
  }
}

TEST_F(Demo, PlasticPartsStandWithAndWithoutALimit) {
  const auto fasteners = shop->fasteners().value();
  const auto plastic = [](const Fastener& one) { return one.plastic() && one.partLimit; };
  EXPECT_TRUE(std::any_of(fasteners.begin(), fasteners.end(), plastic));
  EXPECT_TRUE(
      std::any_of(fasteners.begin(), fasteners.end(), [](const Fastener& one) { return one.needsPartLimit(); }));
}

TEST_F(Demo, TheFilterCoverGetsAWrenchThatKeepsItsLimit) {
  const auto covers = shop->findFasteners("filter housing", 10).value();
  const auto cover = std::find_if(covers.begin(), covers.end(), [](const Fastener& one) { return one.plastic(); });
  ASSERT_NE(cover, covers.end());
  const auto choice = shop->choose(cover->id, shop->today()).value();
  ASSERT_FALSE(choice.choice.options.empty());
  for (const auto& option : choice.choice.options) {
    EXPECT_LE(*option.delivery.probabilityOverPartLimit, shop->policy().partLimitRisk) << option.tool;
    EXPECT_GE(option.delivery.probabilityWithin, 0.5) << option.tool;
  }
  const auto refused = [&](const std::string& tool) {
    return std::any_of(choice.choice.refused.begin(), choice.choice.refused.end(),
                       [&](const RefusedTool& one) { return one.tool == tool; });
  };
  EXPECT_TRUE(refused("W24")) << "never checked";
  EXPECT_TRUE(refused("W16")) << "a lorry's wheel wrench";
}

}  // namespace
}  // namespace steadyturn
