#include "budget.h"

#include <gsl/gsl_statistics_double.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

namespace steadyturn {
namespace {

TEST(StandardDeviation, OfEqualValuesIsExactlyZero) {
  for (double value : {0.1, -1.0 / 3, 4.000000000000001, 1e-12}) {
    for (std::size_t n : {2u, 3u, 5u, 10u}) {
      const std::vector<double> values(n, value);
      EXPECT_EQ(mean(values), value);
      EXPECT_EQ(standardDeviation(values), 0.0);
    }
  }
}

TEST(StandardDeviation, OfOneValueIsAbsent) {
  const std::vector<double> one{1.5};
  EXPECT_EQ(mean(one), 1.5);
  EXPECT_EQ(standardDeviation(one), std::nullopt);
}

RC_GTEST_PROP(StandardDeviation, AgreesWithTheGnuScientificLibrary, ()) {
  const auto whole = *rc::gen::suchThat(rc::gen::container<std::vector<int>>(rc::gen::inRange(-60000, 60000)),
                                        [](const auto& v) { return v.size() >= 2; });
  std::vector<double> values;
  for (int value : whole) values.push_back(value / 10000.0);
  const double theirs = gsl_stats_sd(values.data(), 1, values.size());
  RC_ASSERT(std::abs(mean(values) - gsl_stats_mean(values.data(), 1, values.size())) < 1e-13);
  RC_ASSERT(std::abs(*standardDeviation(values) - theirs) < 1e-13);
}

CheckInput checkWithSpans(VariationSpans spans) {
  return {.kind = {},
          .maximum = {.value = 100},
          .resolution = StatedTorque{.value = 1},
          .reference = {.expandedPercent = 0.5},
          .variation = spans};
}

double entryOf(const Budget& budget, std::string_view source) {
  const auto entry = std::ranges::find(budget.entries, source, &BudgetEntry::source);
  return entry == budget.entries.end() ? std::nan("") : entry->standardUncertaintyPercent;
}

// A rectangular distribution of full width 2a has the standard uncertainty a/√3 (JCGM 100:2008, 4.3.7); the
// figures are 1/√12 times the spans, written out.
TEST(Budget, HasTheSevenPartsOfIso6789Part2) {
  const Budget budget = budgetOf(checkWithSpans({0.4, 0.3, 0.2, 0.6}), {.value = 50}, 0.5, 5);
  ASSERT_EQ(budget.entries.size(), 7u);
  EXPECT_TRUE(budget.notEvaluated.empty());
  EXPECT_NEAR(entryOf(budget, "reference"), 0.25, 1e-12);
  EXPECT_NEAR(entryOf(budget, "resolution"), 0.577350269, 1e-9);  // 1 N·m in 50 N·m: a full width of 2 %
  EXPECT_NEAR(entryOf(budget, "reproducibility"), 0.115470054, 1e-9);
  EXPECT_NEAR(entryOf(budget, "drive"), 0.086602540, 1e-9);
  EXPECT_NEAR(entryOf(budget, "interface"), 0.057735027, 1e-9);
  EXPECT_NEAR(entryOf(budget, "loading_point"), 0.173205081, 1e-9);
  EXPECT_NEAR(entryOf(budget, "repeatability"), 0.223606798, 1e-9);  // 0.5/√5
}

TEST(Budget, WhatIsMissingCountsZeroAndIsNamed) {
  CheckInput check = checkWithSpans({.drive = 0.3});
  check.resolution.reset();
  const Budget budget = budgetOf(check, {.value = 50}, std::nullopt, 1);
  EXPECT_EQ(budget.notEvaluated, (std::vector<std::string_view>{"resolution", "reproducibility", "interface",
                                                                "loading_point", "repeatability"}));
  EXPECT_EQ(entryOf(budget, "repeatability"), 0);
  EXPECT_NEAR(budget.standardUncertaintyPercent, std::hypot(0.25, 0.086602540), 1e-9);
}

TEST(Budget, ASpanOfZeroWasEvaluated) {
  const Budget budget = budgetOf(checkWithSpans({0.0, 0.0, 0.0, 0.0}), {.value = 50}, 0.0, 5);
  EXPECT_TRUE(budget.notEvaluated.empty());
}

TEST(Budget, TakesTheResolutionInTheTargetsUnit) {
  CheckInput check = checkWithSpans({});
  check.resolution = StatedTorque{.value = 50, .unit = Unit::CentinewtonMetre};
  // Half a newton metre in 25: 2 % full width.
  EXPECT_NEAR(entryOf(budgetOf(check, {.value = 25}, 0.0, 5), "resolution"), 2 / std::sqrt(12), 1e-12);
}

}  // namespace
}  // namespace steadyturn
