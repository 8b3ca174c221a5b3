#include <gsl/gsl_statistics_double.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "check.h"
#include "check_fixture.h"

namespace steadyturn {
namespace {

using testing::exampleCheck;
using testing::newtonMetres;
using testing::pointAt;

PointResult onlyPointOf(const CheckInput& check) {
  const Result<CheckResult> result = evaluateCheck(check);
  if (!result) throw std::runtime_error("refused: " + result.error()[0].field);
  return result->points.at(0);
}

// A case of our own, every figure recomputed with Python's statistics module from the definitions of
// ISO 6789-1 and -2: X = 100, W_md = 0.5 %, r = 1, spans 0.4, 0.3, 0.2, 0.6 %, b_e = 0.1 %.
TEST(EvaluateCheck, GivesEveryFigureOfTheWorkedCase) {
  CheckInput check = exampleCheck();
  check.reference = {.expandedPercent = 0.5, .coverageFactor = 2, .errorPercent = 0.1};
  check.variation = {.reproducibility = 0.4, .drive = 0.3, .interface = 0.2, .loadingPoint = 0.6};
  check.points = {pointAt(100, {101.2, 100.8, 101.0, 101.4, 100.9})};
  const PointResult point = onlyPointOf(check);

  // The mean of the deviations, not the deviation of the mean (−1.048882).
  EXPECT_NEAR(point.meanDeviationPercent, -1.048433, 5e-7);
  // Of the deviations in %. (The readings themselves scatter by 0.240832 N·m.)
  ASSERT_TRUE(point.repeatabilityPercent);
  EXPECT_NEAR(*point.repeatabilityPercent, 0.235606, 5e-7);
  EXPECT_NEAR(point.standardUncertaintyPercent, 0.459458, 5e-7);
  EXPECT_EQ(point.coverageFactor, 2);
  EXPECT_NEAR(point.expandedUncertaintyPercent, 0.918917, 5e-7);
  EXPECT_NEAR(point.intervalPercent, 2.067349, 1e-6);
  EXPECT_TRUE(point.withinLimit);
  EXPECT_EQ(point.verdict, Verdict::Pass);
}

TEST(EvaluateCheck, DeviationIsTakenFromTheReference) {
  // ISO 6789-1: a = (Xa − Xr)/Xr × 100; a tool that says 104 and delivers 100 has a = +4 %.
  EXPECT_DOUBLE_EQ(deviationPercent(104, 100), 4);
  EXPECT_DOUBLE_EQ(deviationPercent(100, 125), -20);
  const PointResult point = onlyPointOf(exampleCheck());
  ASSERT_EQ(point.deviationsPercent.size(), 5u);
  EXPECT_NEAR(point.deviationsPercent[0], 100.0 / 99, 1e-12);    // 0.2/19.8
  EXPECT_NEAR(point.deviationsPercent[4], -100.0 / 101, 1e-12);  // −0.2/20.2
  EXPECT_EQ(point.deviationsPercent[2], 0);
}

TEST(EvaluateCheck, AReadingExactlyAtTheLimitPasses) {
  // Whatever binary makes of it: the deviation is exactly ± 4 % or ± 6 % on paper.
  for (double reference : {0.1, 0.7, 1.1, 3.3, 12.3, 19.9, 20.1, 33.3, 100.0, 123.4, 777.7}) {
    for (double limit : {4.0, 6.0}) {
      for (double sign : {1.0, -1.0}) {
        CheckInput check = exampleCheck();
        check.maximum = newtonMetres(1000);
        check.limitPercent = limit;
        check.points = {pointAt(reference * (100 + sign * limit) / 100, {reference, reference})};
        EXPECT_TRUE(onlyPointOf(check).withinLimit) << reference << " " << sign * limit;
        check.points = {pointAt(reference * (100 + sign * (limit + 0.0001)) / 100, {reference, reference})};
        EXPECT_FALSE(onlyPointOf(check).withinLimit) << reference << " " << sign * limit;
      }
    }
  }
}

TEST(EvaluateCheck, OneReadingOutsideFailsTheSimpleRuleAndTheWorstPointDecides) {
  CheckInput check = exampleCheck();
  check.points.push_back(pointAt(60, {60, 60, 60, 60, 57.6}));  // +4.17 %
  check.points.push_back(pointAt(100, {100, 100.1, 99.9, 100, 100}));
  const auto result = evaluateCheck(check);
  ASSERT_TRUE(result);
  EXPECT_EQ(result->points[0].verdict, Verdict::Pass);
  EXPECT_EQ(result->points[1].verdict, Verdict::Fail);
  EXPECT_EQ(result->points[2].verdict, Verdict::Pass);
  EXPECT_EQ(result->verdict, Verdict::Fail);
  check.rule = DecisionRule::Guarded;
  const auto guarded = evaluateCheck(check);
  ASSERT_TRUE(guarded);
  EXPECT_EQ(guarded->points[1].verdict, Verdict::ConditionalFail);
  EXPECT_EQ(guarded->verdict, Verdict::ConditionalFail);
}

TEST(EvaluateCheck, WithoutALimitItFollowsFromKindAndMaximum) {
  CheckInput check = exampleCheck();
  check.limitPercent.reset();
  EXPECT_EQ(evaluateCheck(check)->limitPercent, 4);
  check.kind.cls = ToolClass::G;
  EXPECT_EQ(evaluateCheck(check)->limitPercent, 6);
  check.kind.cls = ToolClass::A;
  check.maximum = newtonMetres(10);
  check.points = {pointAt(2, {2, 2, 2, 2, 2})};
  EXPECT_EQ(evaluateCheck(check)->limitPercent, 6);
  check.limitPercent = 3;
  EXPECT_EQ(evaluateCheck(check)->limitPercent, 3);
}

TEST(EvaluateCheck, ReadingsInAnotherUnitAreComparedInTheTargetsUnit) {
  CheckInput check = exampleCheck();
  check.points = {pointAt(20, {})};
  // 1 lbf·ft = 1.3558179483314004 N·m: 20 N·m is 14.7512… lbf·ft.
  check.points[0].readings = {{.value = 20 / 1.3558179483314004, .unit = Unit::PoundForceFoot},
                              {.value = 2000, .unit = Unit::CentinewtonMetre},
                              {.value = 20, .unit = Unit::NewtonMetre}};
  for (double deviation : onlyPointOf(check).deviationsPercent) EXPECT_NEAR(deviation, 0, 1e-12);
}

TEST(EvaluateCheck, IdenticalReadingsDoNotScatter) {
  CheckInput check = exampleCheck();
  check.points = {pointAt(20, {20.1, 20.1, 20.1})};
  EXPECT_EQ(onlyPointOf(check).repeatabilityPercent, 0.0);
}

TEST(EvaluateCheck, OneReadingSaysNothingAboutRepeatability) {
  CheckInput check = exampleCheck();
  check.points = {pointAt(20, {20.1}), pointAt(60, {60.1})};
  const auto result = evaluateCheck(check);
  ASSERT_TRUE(result);
  EXPECT_EQ(result->points[0].repeatabilityPercent, std::nullopt);
  EXPECT_EQ(result->notEvaluated, std::vector<std::string>{"repeatability"});  // once, for two points
}

TEST(EvaluateCheck, ListsWhatWasNotEvaluated) {
  EXPECT_TRUE(evaluateCheck(exampleCheck())->notEvaluated.empty());
  CheckInput check = exampleCheck();
  check.resolution.reset();
  check.variation = {.drive = 0.2};
  EXPECT_EQ(evaluateCheck(check)->notEvaluated,
            (std::vector<std::string>{"resolution", "reproducibility", "interface", "loading_point"}));
}

TEST(EvaluateCheck, ProbabilityBelongsToTheMeanDeviation) {
  CheckInput check = exampleCheck();
  check.points = {pointAt(104, {100, 100, 100})};  // at the limit: half, less nothing on the far side
  EXPECT_NEAR(onlyPointOf(check).conformityProbability, 0.5, 1e-9);
}

RC_GTEST_PROP(EvaluateCheck, TheFiguresHangTogether, ()) {
  const auto steps = *rc::gen::suchThat(rc::gen::container<std::vector<int>>(rc::gen::inRange(-500, 500)),
                                        [](const auto& v) { return v.size() >= 2; });
  CheckInput check = exampleCheck();
  check.rule = *rc::gen::element(DecisionRule::Simple, DecisionRule::Guarded);
  check.points = {pointAt(60, {})};
  for (int step : steps) check.points[0].readings.push_back(newtonMetres(60 + step / 100.0));

  const auto result = evaluateCheck(check);
  RC_ASSERT(result.has_value());
  const PointResult& point = result->points[0];
  double squares = 0;
  for (const BudgetEntry& entry : point.budget) squares += std::pow(entry.standardUncertaintyPercent, 2);
  RC_ASSERT(std::abs(std::sqrt(squares) - point.standardUncertaintyPercent) < 1e-12);
  RC_ASSERT(std::abs(*point.repeatabilityPercent -
                     gsl_stats_sd(point.deviationsPercent.data(), 1, point.deviationsPercent.size())) < 1e-10);
  RC_ASSERT(point.expandedUncertaintyPercent == 2 * point.standardUncertaintyPercent);
  RC_ASSERT(point.intervalPercent >= std::abs(point.meanDeviationPercent) + point.expandedUncertaintyPercent);
  RC_ASSERT(point.conformityProbability >= 0 && point.conformityProbability <= 1);
  RC_ASSERT(result->verdict == point.verdict);
  // Never better than the plain test of every reading allows.
  RC_ASSERT(point.withinLimit || point.verdict >= Verdict::ConditionalFail);
}

}  // namespace
}  // namespace steadyturn
