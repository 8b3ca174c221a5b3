// The bench: set-ups, budgets as measured, references fit for a tool.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <cmath>

#include "date_of.h"
#include "shop.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

class Bench : public testing::Test {
 protected:
  Bench() : shop(Shop::create(folder.filePath("shop.sqlite").toStdString()).value()) {
    EXPECT_TRUE(shop.addTool(wrench("T")));
    EXPECT_TRUE(shop.addTool(wrench("TWIN")));
    auto other = wrench("OTHER");
    other.description = "another model";
    EXPECT_TRUE(shop.addTool(other));
    EXPECT_TRUE(shop.addReference(reference()));
  }

  static Tool wrench(const std::string& id) {
    Tool tool;
    tool.id = id;
    tool.description = "depot wrench";
    tool.maker = "own make";
    tool.kind = {ToolType::Setting, ToolClass::A};
    tool.minimum = 20;
    tool.maximum = 100;
    tool.resolution = 1;
    return tool;
  }

  static Reference reference() {
    Reference made;
    made.id = "R";
    made.certificate = "C 26/118";
    made.calibrated = day(2025, 11, 3);
    made.due = day(2026, 11, 3);
    made.expandedUncertaintyPercent = 0.5;
    made.errorPercent = 0.1;
    return made;
  }

  static BenchSetupDraft setup(Date date) {
    BenchSetupDraft draft;
    draft.tool = "T";
    draft.reference = "R";
    draft.by = "Ines";
    draft.date = date;
    draft.target = "20";
    return draft;
  }

  // Means 20.00, 20.10, 19.94, 20.04: span 0.16 in 20.02 (own case).
  static TypedSeries reproducibility() {
    return {{"19.9", "20.0", "20.1", "20.0", "20.0"},
            {"20.1", "20.1", "20.2", "20.0", "20.1"},
            {"19.9", "20.0", "19.9", "19.9", "20.0"},
            {"20.0", "20.1", "20.0", "20.1", "20.0"}};
  }

  // The own case of ISO 6789-2's formulas: X = 100.
  static CheckDraft check(const std::string& tool, Date date) {
    CheckDraft draft;
    draft.tool = tool;
    draft.reference = "R";
    draft.date = date;
    draft.points = {{.target = "100", .readings = {"101.2", "100.8", "101.0", "101.4", "100.9"}}};
    return draft;
  }

  const BudgetLine& line(const BudgetView& view, const std::string& source) {
    for (const auto& one : view.lines) {
      if (one.source == source) return one;
    }
    throw std::out_of_range(source);
  }

  QTemporaryDir folder;
  Shop shop;
};

TEST_F(Bench, PlansTheRunsAtTheLowestSetPoint) {
  const auto plan = shop.planBenchSetup("T").value();
  EXPECT_EQ(plan.target, (StatedTorque{20, Unit::NewtonMetre}));
  ASSERT_EQ(plan.runs.size(), 4u);
  EXPECT_EQ(plan.runs[0].readings, 5u);
  EXPECT_EQ(plan.runs[3].series[0], 2u);
}

TEST_F(Bench, ASetupIsReadBackWithItsReadingsAsTyped) {
  auto draft = setup(day(2026, 2, 3));
  draft.readings[0] = reproducibility();
  draft.note = "after the move";
  const auto recorded = shop.recordBenchSetup(draft);
  ASSERT_TRUE(recorded) << recorded.error().front().field << recorded.error().front().accepted;
  const auto setups = shop.benchSetups().value();
  ASSERT_EQ(setups.size(), 1u);
  const auto& kept = setups.front();
  EXPECT_EQ(kept.id, recorded->id);
  EXPECT_EQ(kept.model, modelOf(wrench("TWIN")));
  EXPECT_EQ(kept.readingsOf(SetupRun::Reproducibility), reproducibility());
  EXPECT_FALSE(kept.measured(SetupRun::Drive));
  EXPECT_NEAR(*kept.spans.reproducibility, 0.799200799, 1e-9);
  EXPECT_EQ(kept.spans.drive, std::nullopt);
  EXPECT_EQ(kept.by, "Ines");
  EXPECT_EQ(kept.note, "after the move");
}

TEST_F(Bench, ChecksOfTheModelUseTheNewestSetupOfTheirDay) {
  auto draft = setup(day(2026, 2, 3));
  draft.readings[0] = reproducibility();
  ASSERT_TRUE(shop.recordBenchSetup(draft));
  auto typed = setup(day(2026, 3, 1));
  typed.reference.clear();
  typed.typedSpans = {"", "0.3", "", ""};
  typed.basis = "maker's data sheet";
  ASSERT_TRUE(shop.recordBenchSetup(typed));

  EXPECT_EQ(shop.recordCheck(check("T", day(2026, 2, 2)))->variation.reproducibility, std::nullopt);
  const auto between = shop.recordCheck(check("TWIN", day(2026, 2, 3)));
  EXPECT_NEAR(*between->variation.reproducibility, 0.799200799, 1e-9);
  EXPECT_EQ(between->variation.drive, std::nullopt);
  const auto later = shop.recordCheck(check("TWIN", day(2026, 4, 1)));
  EXPECT_NEAR(*later->variation.reproducibility, 0.799200799, 1e-9);
  EXPECT_EQ(later->variation.drive, 0.3);
  EXPECT_EQ(shop.recordCheck(check("OTHER", day(2026, 4, 1)))->variation.drive, std::nullopt);
}

// Own case, worked by hand from the formulas of ISO 6789-2:2017 (from memory): variances 0.0625 reference, 0.0833333
// resolution, (0.16 + 0.09 + 0.04 + 0.36)/12 spans, 0.235606²/5 repeatability; w = √0.211102, W = 2w, W′ = 1.048433 +
// W + 0.1.
TEST_F(Bench, TheBudgetAgreesWithTheHandCalculation) {
  auto typed = setup(day(2026, 2, 3));
  typed.typedSpans = {"0.4", "0.3", "0.2", "0.6"};
  typed.basis = "hand calculation";
  ASSERT_TRUE(shop.recordBenchSetup(typed));
  const auto views = shop.budgetOf(check("T", day(2026, 3, 1)));
  ASSERT_TRUE(views);
  ASSERT_EQ(views->size(), 1u);
  const auto& view = views->front();
  ASSERT_EQ(view.lines.size(), 7u);
  EXPECT_NEAR(view.standardUncertaintyPercent, 0.459458, 1e-6);
  EXPECT_NEAR(view.expandedUncertaintyPercent, 0.918917, 1e-6);
  EXPECT_NEAR(view.meanDeviationPercent, -1.048433, 1e-6);
  EXPECT_NEAR(view.intervalPercent, 2.067349, 1e-6);
  double shares = 0;
  for (const auto& one : view.lines) shares += one.sharePercent;
  EXPECT_NEAR(shares, 100, 1e-9);
  // 0.0625 and 0.0833333 of 0.211102.
  EXPECT_NEAR(line(view, "reference").sharePercent, 29.6066, 1e-3);
  EXPECT_NEAR(line(view, "resolution").sharePercent, 39.4754, 1e-3);
  EXPECT_EQ(line(view, "drive").origin, "typed 2026-02-03: hand calculation (set-up 1)");
  EXPECT_EQ(line(view, "reference").origin, "from the certificate of R, C 26/118 of 2025-11-03");
  EXPECT_EQ(line(view, "resolution").origin, "the tool's graduation, 1 N·m");
  EXPECT_EQ(line(view, "repeatability").origin, "from the 5 readings here");
  EXPECT_THAT(view.risk, StartsWith("The chance that this pass is wrong is less than 1 in 10,000"));
}

TEST_F(Bench, TheBudgetOfAStoredCheckKeepsItsSetup) {
  auto draft = setup(day(2026, 2, 3));
  draft.readings[0] = reproducibility();
  ASSERT_TRUE(shop.recordBenchSetup(draft));
  const auto recorded = shop.recordCheck(check("T", day(2026, 2, 10)));
  draft.readings[0][0].assign(5, "21");
  draft.date = day(2026, 2, 5);  // written up late; the check went without it
  ASSERT_TRUE(shop.recordBenchSetup(draft));
  const auto view = shop.budgetOf(recorded->id).value().front();
  EXPECT_EQ(line(view, "reproducibility").origin, "measured at this bench, 2026-02-03 (set-up 1)");
  EXPECT_NEAR(line(view, "reproducibility").standardUncertaintyPercent, 0.230709, 1e-6);
  EXPECT_EQ(line(view, "drive").origin, "not evaluated, counts as 0");
  EXPECT_FALSE(line(view, "drive").evaluated);
  EXPECT_EQ(line(view, "drive").sharePercent, 0);
  EXPECT_THAT(view.risk, HasSubstr("not evaluated"));
}

TEST_F(Bench, RefusesAHalfDoneSetup) {
  const auto fields = [&](const BenchSetupDraft& draft) {
    std::vector<std::string> found;
    if (const auto made = shop.recordBenchSetup(draft); !made) {
      for (const auto& problem : made.error()) found.push_back(problem.field);
    }
    return found;
  };
  using testing::ElementsAre;
  EXPECT_THAT(fields(setup(day(2026, 2, 3))), ElementsAre("readings"));
  auto draft = setup(day(2026, 2, 3));
  draft.readings[0] = reproducibility();
  draft.readings[0][2].pop_back();
  EXPECT_THAT(fields(draft), ElementsAre("reproducibility[2]"));
  draft.readings[0] = reproducibility();
  draft.readings[0][3][1] = "2O.1";
  EXPECT_THAT(fields(draft), ElementsAre("reproducibility[3][1]"));
  draft.readings[0] = reproducibility();
  draft.reference.clear();
  draft.typedSpans[1] = "0.2";
  draft.target = "120";
  EXPECT_THAT(fields(draft), ElementsAre("target", "reference", "basis"));
  draft.typedSpans[0] = "0.1";
  EXPECT_EQ(fields(draft).front(), "reproducibility");
  EXPECT_TRUE(shop.benchSetups().value().empty());
}

class ReferenceDoubts : public Bench {
 protected:
  std::vector<ReferenceDoubtKind> doubts(Date date, const std::string& id = "R") {
    std::vector<ReferenceDoubtKind> kinds;
    const auto found = shop.referenceDoubts("T", id, date).value();
    for (const auto& doubt : found) kinds.push_back(doubt.kind);
    return kinds;
  }
};

TEST_F(ReferenceDoubts, NoneOfAFitReference) { EXPECT_TRUE(doubts(day(2026, 11, 3)).empty()); }

TEST_F(ReferenceDoubts, PastItsOwnDueDate) {
  EXPECT_THAT(doubts(day(2026, 11, 4)), testing::ElementsAre(ReferenceDoubtKind::PastDue));
  EXPECT_THAT(shop.referenceDoubts("T", "R", day(2026, 11, 4))->front().text, StartsWith("R was due on 2026-11-03"));
}

// A quarter of ±4 % is 1 %, at k = 2 (ISO 6789-1:2017, from memory).
TEST_F(ReferenceDoubts, TooUncertainForTheTool) {
  auto coarse = reference();
  coarse.id = "Q";
  coarse.expandedUncertaintyPercent = 1;
  ASSERT_TRUE(shop.addReference(coarse));
  EXPECT_TRUE(doubts(day(2026, 3, 1), "Q").empty());
  coarse.id = "P";
  coarse.expandedUncertaintyPercent = 1.2;
  coarse.coverageFactor = 3;  // 0.8 % at k = 2
  ASSERT_TRUE(shop.addReference(coarse));
  EXPECT_TRUE(doubts(day(2026, 3, 1), "P").empty());
  coarse.id = "S";
  coarse.coverageFactor = 2;
  ASSERT_TRUE(shop.addReference(coarse));
  EXPECT_THAT(doubts(day(2026, 3, 1), "S"), testing::ElementsAre(ReferenceDoubtKind::TooUncertain));
}

TEST_F(ReferenceDoubts, RangeThatLeavesOutASetPoint) {
  EXPECT_EQ(shop.referenceRange("R").value(), std::nullopt);
  ASSERT_TRUE(shop.setReferenceRange("R", {.low = 30, .high = 200, .unit = Unit::NewtonMetre}));
  EXPECT_THAT(doubts(day(2026, 3, 1)), testing::ElementsAre(ReferenceDoubtKind::RangeNotCovered));
  // 14.75 lbf·ft is 19.998 N·m.
  ASSERT_TRUE(shop.setReferenceRange("R", {.low = 14.75, .high = 73, .unit = Unit::PoundForceFoot}));
  EXPECT_THAT(doubts(day(2026, 3, 1)), testing::ElementsAre(ReferenceDoubtKind::RangeNotCovered));  // 99.0 of 100
  ASSERT_TRUE(shop.setReferenceRange("R", {.low = 14.75, .high = 74, .unit = Unit::PoundForceFoot}));
  EXPECT_TRUE(doubts(day(2026, 3, 1)).empty());
  EXPECT_EQ(shop.referenceRange("R").value()->high, 74);
  EXPECT_FALSE(shop.setReferenceRange("R", {.low = 30, .high = 30, .unit = Unit::NewtonMetre}));
  EXPECT_FALSE(shop.setReferenceRange("X", {.low = 3, .high = 30, .unit = Unit::NewtonMetre}));
}

}  // namespace
}  // namespace steadyturn
