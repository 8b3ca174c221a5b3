#include <gmock/gmock.h>

#include "sample_records.h"
#include "shop_fixture.h"

namespace steadyturn {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

class Search : public ShopTest {
 protected:
  void SetUp() override {
    ShopTest::SetUp();
    write([](OpenShop& to) {
      add(to, "S3-OIL", "oil filter", "housing cap", "M14x1.5");
      add(to, "S3-DRAIN", "oil sump", "drain plug", "M16x1.5");
      add(to, "P1-WHEEL", "axle", "wheel nut", "M18x1.5");
      add(to, "T2-PORTE", "carrosserie arrière", "Entlüftungsdeckel", "M8");
    });
  }
  static void add(OpenShop& to, const char* id, const char* assembly, const char* component, const char* thread,
                  int number = 1) {
    auto fastener = bareFastener();
    fastener.id = id;
    fastener.assembly = assembly;
    fastener.component = component;
    fastener.thread = thread;
    fastener.number = number;
    to.fasteners.add(fastener, stamp);
  }
  std::vector<std::string> found(const std::string& words, int limit = 50) {
    std::vector<std::string> ids;
    for (const auto& fastener : shop().fasteners.search(words, limit)) ids.push_back(fastener.id);
    return ids;
  }
};

TEST_F(Search, EveryWordBeginsSomeWord) {
  EXPECT_THAT(found("dr pl"), ElementsAre("S3-DRAIN"));
  EXPECT_THAT(found("oil h"), ElementsAre("S3-OIL"));
  EXPECT_THAT(found("oil nut"), IsEmpty());
  EXPECT_THAT(found("using"), IsEmpty());
}

TEST_F(Search, AccentsAndCaseDoNotMatter) {
  EXPECT_THAT(found("entluft"), ElementsAre("T2-PORTE"));
  EXPECT_THAT(found("ARRIERE"), ElementsAre("T2-PORTE"));
  EXPECT_THAT(found("arrie\xCC\x80re"), ElementsAre("T2-PORTE"));
}

TEST_F(Search, FindsThreadsAndIds) {
  EXPECT_THAT(found("M14x1.5"), ElementsAre("S3-OIL"));
  EXPECT_THAT(found("p1-wh"), ElementsAre("P1-WHEEL"));
}

TEST_F(Search, AHitInTheIdComesFirst) {
  write([](OpenShop& to) { add(to, "WHEEL-9", "axle", "cap", "M18"); });
  EXPECT_THAT(found("wheel"), testing::UnorderedElementsAre("WHEEL-9", "P1-WHEEL"));
  write([](OpenShop& to) { add(to, "Q", "drain", "lid", "M18"); });
  EXPECT_THAT(found("drain"), ElementsAre("S3-DRAIN", "Q"));
}

TEST_F(Search, OnlyTheNewestRevision) {
  write([](OpenShop& to) { add(to, "S3-DRAIN", "gearbox", "magnetic screw", "M16x1.5", 2); });
  EXPECT_THAT(found("plug"), IsEmpty());
  EXPECT_THAT(found("magnetic"), ElementsAre("S3-DRAIN"));
  EXPECT_EQ(shop().fasteners.search("magnetic", 1).at(0).number, 2);
}

TEST_F(Search, NoWordsGiveAllAndTheLimitHolds) {
  EXPECT_THAT(found("  - "), ElementsAre("P1-WHEEL", "S3-DRAIN", "S3-OIL", "T2-PORTE"));
  EXPECT_EQ(found("", 2).size(), 2U);
  EXPECT_EQ(found("m1", 1).size(), 1U);
}

// Names of the trade (common practice): a drain plug is a sump plug, or an oil drain screw.
TEST_F(Search, WhatMeansTheSameIsFound) {
  EXPECT_THAT(found("sump plug"), ElementsAre("S3-DRAIN"));
  EXPECT_THAT(found("lug nut"), ElementsAre("P1-WHEEL"));
  EXPECT_THAT(found("lug nut axle"), ElementsAre("P1-WHEEL"));
  EXPECT_THAT(found("oil dr"), ElementsAre("S3-DRAIN"));  // both words are there, and the phrase has begun
  EXPECT_THAT(found("wheel sump"), IsEmpty());
}

TEST_F(Search, TheShopExtendsTheSynonyms) {
  EXPECT_THAT(found("hat"), IsEmpty());
  write([](OpenShop& to) { to.fasteners.synonyms().add("hat", "housing cap"); });
  EXPECT_THAT(found("hat"), ElementsAre("S3-OIL"));
  // A group's phrases all mean the same, whichever was named when the next came in.
  write([](OpenShop& to) { to.fasteners.synonyms().add("bonnet", "hat"); });
  EXPECT_THAT(found("bonnet"), ElementsAre("S3-OIL"));
  write([](OpenShop& to) { EXPECT_TRUE(to.fasteners.synonyms().remove("bonnet")); });
  EXPECT_THAT(found("bonnet"), IsEmpty());
  write([](OpenShop& to) { EXPECT_FALSE(to.fasteners.synonyms().remove("bonnet")); });
}

// One edit: two letters changed about, one missing, one too many, another one.
TEST_F(Search, ASlipInTypingIsForgiven) {
  for (const char* slip : {"drian plug", "dran plug", "drainn plug", "draim plug", "drai plgu", "smup plug"}) {
    EXPECT_THAT(found(slip), ElementsAre("S3-DRAIN")) << slip;
  }
  EXPECT_THAT(found("entlufutng"), ElementsAre("T2-PORTE"));
  EXPECT_THAT(found("housnig"), ElementsAre("S3-OIL"));
  EXPECT_THAT(found("dxaxn"), IsEmpty());    // two edits
  EXPECT_THAT(found("nit"), IsEmpty());      // too short to tell
  EXPECT_THAT(found("M15x1.5"), IsEmpty());  // a number is no slip
}

TEST_F(Search, WhatIsTypedIsNeverQueryLanguage) {
  std::string zero("oil");
  zero.push_back('\0');
  zero += "sump";
  EXPECT_THAT(found(zero), ElementsAre("S3-DRAIN"));
  for (const auto* typed :
       {"\"", "oil OR nut", "NEAR(oil sump", "component:oil", "oil*", "^oil", "(((", "' OR 1=1 --"}) {
    EXPECT_NO_THROW(found(typed)) << typed;
  }
  EXPECT_THAT(found("oil OR nut"), IsEmpty());
}

}  // namespace
}  // namespace steadyturn
