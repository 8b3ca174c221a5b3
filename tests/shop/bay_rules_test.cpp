// Approval, stages, services and job sheets, as every face gets them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QTemporaryDir>

#include "shop.h"
#include "shop_limit.h"
#include "shop_proof.h"

namespace steadyturn {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr Date workday = std::chrono::sys_days(std::chrono::year(2026) / 3 / 14);

class BayRules : public testing::Test {
 protected:
  static Fastener cover(const std::string& id = "C") {
    Fastener fastener;
    fastener.id = id;
    fastener.component = "filter cover";
    fastener.target = 25;
    fastener.seal = "O-ring";
    fastener.renew = true;
    fastener.seatCheck = "sits flat";
    fastener.stages = {{.value = 10}, {.value = 25}};
    fastener.enteredBy = "Petra Lind";
    return fastener;
  }
  void addWrench() {
    Tool tool;
    tool.id = "T";
    tool.kind = {ToolType::Setting, ToolClass::A};
    tool.minimum = 10;
    tool.maximum = 50;
    tool.resolution = 0.5;
    Reference reference;
    reference.id = "R";
    reference.expandedUncertaintyPercent = 0.4;
    ASSERT_TRUE(shop.addTool(tool));
    ASSERT_TRUE(shop.addReference(reference));
    CheckDraft draft;
    draft.tool = "T";
    draft.reference = "R";
    draft.date = workday;
    draft.points = {{.target = "25", .readings = {"25", "25.1", "24.9", "25", "25"}}};
    ASSERT_TRUE(shop.recordCheck(draft));
  }
  static Tightening done(const std::string& fastener = "C") {
    Tightening made;
    made.job = "J";
    made.date = workday;
    made.fastener = fastener;
    made.tool = "T";
    made.setting = "25";
    made.seatChecked = true;
    made.by = "Sven";
    made.stagesDone = 2;
    made.sealRenewed = true;
    return made;
  }
  template <typename T>
  static Problem problemOf(const Result<T>& result) {
    return result ? Problem{.field = "none"} : result.error().front();
  }
  void expectIntact() {
    const auto verified = verifyShop(shop, {}, {});
    ASSERT_TRUE(verified);
    EXPECT_TRUE(verified->intact()) << (verified->faults.empty() ? "" : verified->faults.front().what);
  }

  QTemporaryDir folder;
  Shop shop = *Shop::create(folder.filePath("shop.sturn").toStdString());
};

TEST_F(BayRules, ASecondPersonReleasesASpecification) {
  ASSERT_TRUE(shop.addFastener(cover()));
  EXPECT_FALSE(shop.fastener("C")->released());
  EXPECT_THAT(shop.choose("C", workday)->warnings, testing::Contains(HasSubstr("Not released")));
  EXPECT_EQ(problemOf(shop.approveFastener("C", " petra  lind")).kind, ProblemKind::NotPermitted);
  EXPECT_EQ(problemOf(shop.approveFastener("C", "  ")).field, "by");
  const auto released = shop.approveFastener("C", "R. Okoye");
  ASSERT_TRUE(released);
  EXPECT_EQ(released->approvedBy, "R. Okoye");
  EXPECT_EQ(problemOf(shop.approveFastener("C", "somebody")).kind, ProblemKind::Conflict);
  EXPECT_THAT(shop.choose("C", workday)->warnings, testing::Not(testing::Contains(HasSubstr("Not released"))));
  expectIntact();
}

TEST_F(BayRules, WithoutAWrenchItIsSaidWhatWouldDo) {
  auto fastener = cover();
  fastener.low = 24;
  fastener.high = 26;
  ASSERT_TRUE(shop.addFastener(fastener));
  // The window's middle 25 N·m, and half its width: 1 of 25, 4 %. An adapter of 1.25 (400 and 100 mm) asks for 20
  // N·m.
  EXPECT_THAT(shop.choose("C", workday)->warnings,
              testing::Contains(HasSubstr("near 25 N·m and whose single pulls stay within ±4 %")));
  EXPECT_THAT(shop.choose("C", workday, Adapter{400, 100, 0})->warnings, testing::Contains(HasSubstr("near 20 N·m")));
}

TEST_F(BayRules, AChangedSpecificationWaitsForApprovalAgain) {
  ASSERT_TRUE(shop.addFastener(cover()));
  ASSERT_TRUE(shop.approveFastener("C", "R. Okoye"));
  auto changed = *shop.fastener("C");
  changed.enteredBy = "R. Okoye";
  changed.lubrication = "oil the ring";
  ASSERT_TRUE(shop.reviseFastener(changed, "bulletin 4"));
  const auto revisions = *shop.fastenerRevisions("C");
  ASSERT_EQ(revisions.size(), 2U);
  EXPECT_TRUE(revisions[0].released());
  EXPECT_FALSE(revisions[1].released());
  EXPECT_EQ(problemOf(shop.approveFastener("C", "R. Okoye")).kind, ProblemKind::NotPermitted);
  EXPECT_TRUE(shop.approveFastener("C", "Petra Lind"));
  expectIntact();
}

TEST_F(BayRules, StagesEndAtTheTargetAndAddUpToTheAngle) {
  auto fastener = cover();
  fastener.stages = {{.value = 10}, {.value = 24}};
  EXPECT_EQ(problemOf(shop.addFastener(fastener)).field, "stages");
  fastener.stages = {{.value = 25}, {.value = 90, .angle = true}};
  EXPECT_EQ(problemOf(shop.addFastener(fastener)).field, "stages");
  fastener.angleDeg = 90;
  ASSERT_TRUE(shop.addFastener(fastener));
  EXPECT_EQ(shop.fastener("C")->stages, fastener.stages);
}

TEST(Stages, AreReadAsPeopleTypeThem) {
  const TighteningStages wanted{{.value = 30}, {.value = 60}, {.value = 90, .angle = true}};
  for (const char* typed : {"30;60;90deg", "30 + 60 + 90°", " 30; 60; 90 deg ;"}) {
    const auto read = parseStages(typed, "stages");
    ASSERT_TRUE(read) << typed;
    EXPECT_EQ(*read, wanted) << typed;
  }
  for (const char* wrong : {"90deg", "30;;60", "30;0", "30;x", "-3"})
    EXPECT_FALSE(parseStages(wrong, "stages")) << wrong;
  EXPECT_TRUE(parseStages("", "stages")->empty());
}

TEST_F(BayRules, AServiceGivesTheSheetItsLines) {
  ASSERT_TRUE(shop.addFastener(cover("A")));
  ASSERT_TRUE(shop.addFastener(cover("B")));
  EXPECT_EQ(problemOf(shop.setService({.name = "oil", .fasteners = {"A", "X"}})).found, "X");
  ASSERT_TRUE(shop.setService({.name = "oil", .fasteners = {"A"}}));
  ASSERT_TRUE(shop.setService({.name = "oil", .fasteners = {"B", "A"}}));
  EXPECT_THAT(shop.services()->at(0).fasteners, ElementsAre("B", "A"));
  const JobDraft draft{
      .job = "J", .vehicle = "van 2", .service = "oil", .fasteners = {}, .date = workday, .by = "Sven"};
  const auto sheet = shop.openJob(draft);
  ASSERT_TRUE(sheet);
  ASSERT_EQ(sheet->lines.size(), 2U);
  EXPECT_EQ(sheet->lines[0].spec.id, "B");
  EXPECT_EQ(shop.openJobs()->size(), 1U);
  EXPECT_EQ(problemOf(shop.openJob(draft)).kind, ProblemKind::Conflict);
  expectIntact();
}

TEST_F(BayRules, AJobClosesWhenAllIsDoneOrWithAReason) {
  addWrench();
  ASSERT_TRUE(shop.addFastener(cover()));
  ASSERT_TRUE(shop.openJob(
      {.job = "J", .vehicle = "van 2", .service = {}, .fasteners = {"C"}, .date = workday, .by = "Sven"}));
  EXPECT_THAT(problemOf(shop.closeJob("J", workday, "Sven", "")).found, HasSubstr("C: not tightened"));
  auto half = done();
  half.stagesDone = 1;
  half.sealRenewed = std::nullopt;
  ASSERT_TRUE(shop.recordTightening(half));
  EXPECT_THAT(missingOf(shop.jobSheet("J")->lines[0]), ElementsAre("1 of 2 stages", "seal not renewed"));
  const auto whole = shop.recordTightening(done());
  ASSERT_TRUE(whole);
  EXPECT_EQ(whole->vehicle, "van 2");  // an opened job knows it
  EXPECT_THAT(missingOf(shop.jobSheet("J")->lines[0]), IsEmpty());
  ASSERT_TRUE(shop.closeJob("J", workday, "Sven", ""));
  EXPECT_THAT(*shop.openJobs(), IsEmpty());
  EXPECT_EQ(problemOf(shop.recordTightening(done())).field, "job");
  EXPECT_EQ(problemOf(shop.closeJob("J", workday, "Sven", "")).kind, ProblemKind::Conflict);
  expectIntact();
}

TEST_F(BayRules, AToolHeldSinceIsRefused) {
  addWrench();
  ASSERT_TRUE(shop.addFastener(cover()));
  ASSERT_TRUE(
      shop.openJob({.job = "J", .vehicle = "van 2", .service = {}, .fasteners = {"C"}, .date = workday, .by = {}}));
  ASSERT_TRUE(shop.holdTool("T", "fell"));
  EXPECT_THAT(problemOf(shop.recordTightening(done())).found, HasSubstr("held"));
  auto tooMany = done();
  tooMany.stagesDone = 3;
  EXPECT_EQ(problemOf(shop.recordTightening(tooMany)).field, "stages_done");
}

TEST_F(BayRules, AReasonClosesAJobAsItIs) {
  ASSERT_TRUE(shop.addFastener(cover()));
  ASSERT_TRUE(
      shop.openJob({.job = "J", .vehicle = "van 2", .service = {}, .fasteners = {"C"}, .date = workday, .by = {}}));
  const auto closed = shop.closeJob("J", workday, "Sven", "the part did not come");
  ASSERT_TRUE(closed);
  EXPECT_EQ(closed->job.closed->note, "the part did not come");
}

// 70 % of a stripping torque of 50 N·m (design practice for screws in plastic) is 35 N·m.
TEST_F(BayRules, aTrialProposesALimitButNeverInPlaceOfThePartsOwn) {
  Fastener plastic = cover();
  plastic.partMaterial = "plastic";
  const auto proposed = proposeLimit(plastic, TrialKind::Stripping, {50, Unit::NewtonMetre});
  ASSERT_TRUE(proposed);
  takeOver(plastic, *proposed);
  EXPECT_DOUBLE_EQ(*plastic.partLimit, 35);
  EXPECT_THAT(plastic.limitBasis, HasSubstr("stripping torque 50 N·m by trial"));
  EXPECT_TRUE(proposeLimit(plastic, TrialKind::Stripping, {45, Unit::NewtonMetre})) << "a better trial may follow";
  plastic.limitBasis.clear();  // the maker's value has come
  const auto refused = proposeLimit(plastic, TrialKind::Stripping, {50, Unit::NewtonMetre});
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().front().kind, ProblemKind::Conflict);
  EXPECT_THAT(refused.error().front().found, HasSubstr("35 N·m"));
}

}  // namespace
}  // namespace steadyturn
