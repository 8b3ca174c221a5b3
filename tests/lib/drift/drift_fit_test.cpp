#include <gsl/gsl_cdf.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "day.h"
#include "drift.h"
#include "gsl_common_slope.h"

namespace steadyturn {
namespace {

using std::chrono::days;
using testing::GslCommonSlope;

const std::vector<DatedDeviation> oneAdjustment{{day("2023-01-16"), Phase::AsFound, 0.2},
                                                {day("2024-01-10"), Phase::AsFound, 1.1},
                                                {day("2024-01-10"), Phase::AsLeft, 0.1},
                                                {day("2025-01-14"), Phase::AsFound, 0.9}};

TEST(DriftFit, AnAsLeftEntryStartsASegment) {
  const DriftFit fit(oneAdjustment, 0.95);
  ASSERT_EQ(fit.segments().size(), 2U);
  EXPECT_EQ(fit.count(), 4U);
  EXPECT_EQ(fit.degreesOfFreedom(), 1);
  const Segment& first = fit.segments()[0];
  EXPECT_EQ(first.count, 2U);
  EXPECT_EQ(first.first, day("2023-01-16"));
  EXPECT_EQ(first.last, day("2024-01-10"));
  EXPECT_NEAR(first.meanYears, 359 / 365.25 / 2, 1e-12);
  EXPECT_NEAR(first.meanDeviation, 0.65, 1e-12);
  const Segment& second = fit.segments()[1];
  EXPECT_EQ(second.first, day("2024-01-10"));
  EXPECT_EQ(second.last, day("2025-01-14"));
  EXPECT_NEAR(second.meanDeviation, 0.5, 1e-12);
}

TEST(DriftFit, TheOrderOfTheListDoesNotMatter) {
  std::vector<DatedDeviation> shuffled{oneAdjustment[3], oneAdjustment[2], oneAdjustment[0], oneAdjustment[1]};
  const DriftFit sorted(oneAdjustment, 0.95);
  const DriftFit unsorted(shuffled, 0.95);
  EXPECT_EQ(unsorted.slopePercentPerYear(), sorted.slopePercentPerYear());
  EXPECT_EQ(unsorted.segments().size(), 2U);
  EXPECT_EQ(unsorted.predict(day("2026-06-01"))->deviationPercent,
            sorted.predict(day("2026-06-01"))->deviationPercent);
}

TEST(DriftFit, AFirstEntryAsLeftIsTheFirstSegment) {
  const DriftFit fit(std::vector<DatedDeviation>{{day("2024-01-10"), Phase::AsLeft, 0.1},
                                                 {day("2025-01-10"), Phase::AsFound, 0.4},
                                                 {day("2025-01-10"), Phase::AsFound, 0.5}},
                     0.95);
  ASSERT_EQ(fit.segments().size(), 1U);
  EXPECT_EQ(fit.segments()[0].count, 3U);
  EXPECT_EQ(fit.degreesOfFreedom(), 1);
}

// The contract's example, solved by GSL's general least squares.
TEST(DriftFit, AgreesWithGeneralLeastSquares) {
  const double years[] = {0, 359 / 365.25, 359 / 365.25, 729 / 365.25};
  const double deviations[] = {0.2, 1.1, 0.1, 0.9};
  const std::size_t sizes[] = {2, 2};
  const GslCommonSlope witness(years, deviations, sizes);
  const DriftFit fit(oneAdjustment, 0.95);
  EXPECT_NEAR(fit.slopePercentPerYear().value(), witness.slope(), 1e-12);
  EXPECT_NEAR(fit.slopeStandardError().value(), witness.slopeError(), 1e-12);
  EXPECT_NEAR(fit.residualStandardDeviation().value(), witness.residual(), 1e-12);

  const double t = gsl_cdf_tdist_Pinv(0.975, 1);
  EXPECT_NEAR(fit.slopeInterval()->low, witness.slope() - t * witness.slopeError(), 1e-9);
  EXPECT_NEAR(fit.slopeInterval()->high, witness.slope() + t * witness.slopeError(), 1e-9);
  EXPECT_NEAR(fit.pValue().value(), 2 * gsl_cdf_tdist_Q(witness.slope() / witness.slopeError(), 1), 1e-9);

  const double asOf = yearsBetween(day("2023-01-16"), day("2026-06-01"));
  for (const std::size_t segment : {0U, 1U}) {
    const Prediction prediction = fit.predict(day("2026-06-01"), segment).value();
    EXPECT_NEAR(prediction.deviationPercent, witness.at(asOf, segment), 1e-9);
    EXPECT_NEAR(prediction.standardError.value(), witness.predictionError(asOf, segment), 1e-9);
    EXPECT_NEAR(prediction.interval->high, witness.at(asOf, segment) + t * witness.predictionError(asOf, segment),
                1e-8);
  }
  EXPECT_EQ(fit.predict(day("2026-06-01"))->deviationPercent, fit.predict(day("2026-06-01"), 1)->deviationPercent);
}

TEST(DriftFit, WithoutScatterTheIntervalsCollapse) {
  const std::vector<DatedDeviation> flat{{day("2023-01-01"), Phase::AsFound, 0.7},
                                         {day("2024-01-01"), Phase::AsFound, 0.7},
                                         {day("2025-01-01"), Phase::AsFound, 0.7}};
  const DriftFit fit(flat, 0.95);
  EXPECT_EQ(fit.slopePercentPerYear(), 0);
  EXPECT_EQ(fit.pValue(), 1);
  EXPECT_EQ(fit.predict(day("2030-01-01"))->interval->low, 0.7);
  EXPECT_EQ(fit.predict(day("2030-01-01"))->interval->high, 0.7);
  EXPECT_FALSE(fit.crossing(day("2025-01-01"), 4, 7305));
  // A limit that is only touched is kept.
  EXPECT_FALSE(fit.crossing(day("2025-01-01"), 0.7, 7305));

  // Equal steps that binary fractions hold exactly: one a day.
  const std::vector<DatedDeviation> rising{{day("2023-01-01"), Phase::AsFound, 0},
                                           {day("2023-01-03"), Phase::AsFound, 2},
                                           {day("2023-01-05"), Phase::AsFound, 4}};
  const DriftFit line(rising, 0.95);
  EXPECT_NEAR(line.slopePercentPerYear().value(), 365.25, 1e-9);
  EXPECT_LT(line.pValue().value(), 1e-9);
  // 9.5 lies between the deviations of the 10th and the 11th of January.
  EXPECT_EQ(line.crossing(day("2023-01-05"), 9.5, 7305), day("2023-01-11"));
}

std::vector<DatedDeviation> anyHistory() {
  std::vector<DatedDeviation> checks;
  Date date = day("2015-01-01");
  const int count = *rc::gen::inRange(4, 14);
  const double drift = *rc::gen::inRange(-100, 100) / 5e4;  // % a day
  double level = 0;
  for (int i = 0; i < count; ++i) {
    const int gap = *rc::gen::inRange(20, 500);
    date += days(gap);
    level += drift * gap;
    const double noise = *rc::gen::inRange(-100, 100) / 200.0;
    checks.push_back({date, Phase::AsFound, level + noise});
    if (*rc::gen::inRange(0, 4) == 0) {
      level = 0;
      checks.push_back({date, Phase::AsLeft, noise / 3});
    }
  }
  return checks;
}

RC_GTEST_PROP(DriftFitProperty, CrossingIsTheFirstDayOutsideThatACountingOfDaysFinds, ()) {
  const DriftFit fit(anyHistory(), 0.95);
  RC_PRE(fit.degreesOfFreedom() >= 1 && fit.slopePercentPerYear().has_value());
  const double limit = *rc::gen::inRange(100, 1200) / 100.0;
  const Date from = fit.segments().back().last + days(*rc::gen::inRange(-400, 800));
  constexpr int horizon = 2000;
  std::optional<Date> counted;
  for (int i = 0; i <= horizon && !counted; ++i) {
    const Interval interval = fit.predict(from + days(i))->interval.value();
    if (interval.low < -limit || interval.high > limit) counted = from + days(i);
  }
  RC_ASSERT(fit.crossing(from, limit, horizon) == counted);
}

RC_GTEST_PROP(DriftFitProperty, WiderConfidenceCrossesNoLater, ()) {
  const auto checks = anyHistory();
  const DriftFit narrow(checks, 0.8);
  const DriftFit wide(checks, 0.99);
  RC_PRE(narrow.degreesOfFreedom() >= 1 && narrow.slopePercentPerYear().has_value());
  const Date from = checks.back().date;
  const auto late = narrow.crossing(from, 4, 7305);
  const auto early = wide.crossing(from, 4, 7305);
  RC_ASSERT(!late || (early && *early <= *late));
}

}  // namespace
}  // namespace steadyturn
