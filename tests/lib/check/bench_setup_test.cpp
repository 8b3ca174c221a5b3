// Own cases, worked by hand from the formulas of ISO 6789-2:2017 (from memory): b = largest − smallest mean,
// w = b/(2√3).
#include "bench_setup.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "budget.h"

namespace steadyturn {
namespace {

std::vector<StatedTorque> run(std::initializer_list<double> values) {
  std::vector<StatedTorque> readings;
  for (const double value : values) readings.push_back({value, Unit::NewtonMetre});
  return readings;
}

// Means 20.00, 20.10, 19.94, 20.04: span 0.16 in a mean of 20.02 is 0.799200799 %.
const RunSeries fourSeries{run({19.9, 20.0, 20.1, 20.0, 20.0}), run({20.1, 20.1, 20.2, 20.0, 20.1}),
                           run({19.9, 20.0, 19.9, 19.9, 20.0}), run({20.0, 20.1, 20.0, 20.1, 20.0})};

TEST(BenchSetup, ReproducibilityIsTheSpanOfFourMeans) {
  const auto span = spanPercent(SetupRun::Reproducibility, fourSeries);
  ASSERT_TRUE(span);
  EXPECT_NEAR(*span, 0.799200799, 1e-9);
}

TEST(BenchSetup, ItsSpanEntersTheBudgetAsARectangle) {
  CheckInput check;
  check.maximum = {.value = 100};
  check.variation.reproducibility = *spanPercent(SetupRun::Reproducibility, fourSeries);
  const auto budget = budgetOf(check, {.value = 20}, 0.3, 5);
  const auto entry = std::ranges::find(budget.entries, "reproducibility", &BudgetEntry::source);
  // 0.799200799 / (2 · 1.732050808)
  EXPECT_NEAR(entry->standardUncertaintyPercent, 0.230709, 1e-6);
}

TEST(BenchSetup, LoadingPointComparesTwoHands) {
  // Means 20.3 and 19.7 around 20: 3 %.
  const RunSeries two{std::vector<StatedTorque>(10, {20.3, Unit::NewtonMetre}),
                      std::vector<StatedTorque>(10, {19.7, Unit::NewtonMetre})};
  EXPECT_NEAR(*spanPercent(SetupRun::LoadingPoint, two), 3, 1e-9);
}

TEST(BenchSetup, DriveTakesFourOrSixPositions) {
  RunSeries series(4, std::vector<StatedTorque>(10, {50, Unit::PoundForceFoot}));
  EXPECT_EQ(spanPercent(SetupRun::Drive, series), 0.0);
  series.resize(6, series.front());
  series[5].assign(10, {50.6, Unit::PoundForceFoot});
  // 0.6 in a mean of 50.1.
  EXPECT_NEAR(*spanPercent(SetupRun::Drive, series), 1.197604790, 1e-9);
  series.resize(5);
  const auto five = spanPercent(SetupRun::Drive, series);
  ASSERT_FALSE(five);
  EXPECT_EQ(five.error().front().field, "drive");
  EXPECT_EQ(five.error().front().found, "5 series");
}

TEST(BenchSetup, NamesEveryShortSeriesAndEveryZero) {
  RunSeries series = fourSeries;
  series[1].pop_back();
  series[3][2].value = 0;
  const auto span = spanPercent(SetupRun::Reproducibility, series);
  ASSERT_FALSE(span);
  ASSERT_EQ(span.error().size(), 2u);
  EXPECT_EQ(span.error()[0].field, "reproducibility[1]");
  EXPECT_EQ(span.error()[0].accepted, "5 readings");
  EXPECT_EQ(span.error()[1].field, "reproducibility[3][2]");
}

TEST(BenchSetup, EachRunHasItsOwnSpan) {
  VariationSpans spans;
  double value = 0.1;
  for (const auto run : allSetupRuns) spanOf(spans, run) = value, value += 0.1;
  EXPECT_EQ(spans.reproducibility, 0.1);
  EXPECT_EQ(spans.drive, 0.2);
  EXPECT_NEAR(*spans.interface, 0.3, 1e-12);
  EXPECT_NEAR(*spans.loadingPoint, 0.4, 1e-12);
}

}  // namespace
}  // namespace steadyturn
