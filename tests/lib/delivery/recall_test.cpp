#include "recall.h"

#include <gsl/gsl_cdf.h>
#include <gtest/gtest.h>

#include <cmath>

#include "delivery_example.h"

namespace steadyturn {
namespace {

using testing::newtonMetres;

Date day(std::string_view text) { return parseDate(text, "date").value(); }

KnownDeviation known(double target, double mean, double pull, double standard) {
  return {.target = newtonMetres(target),
          .meanDeviationPercent = mean,
          .pull = {.standardPercent = pull, .degreesOfFreedom = {}},
          .standardUncertaintyPercent = standard};
}

// 100 days from good to bad. At 20 N·m the deviation goes from 1 % to 5 %, at 60 N·m from 0 % to 9 %.
DoubtfulPeriod period() {
  return {.lastGood = day("2025-01-01"),
          .good = {known(20, 1, 0.3, 0.4), known(60, 0, 0.2, 0.4)},
          .foundBad = day("2025-04-11"),
          .bad = {known(20, 5, 0.2, 0.6), known(60, 9, 0.5, 0.6)}};
}

PastTightening tightening(std::string_view date, double setting) {
  return {.date = day(date),
          .setting = newtonMetres(setting),
          .window = {.low = newtonMetres(0.95 * setting), .high = newtonMetres(1.05 * setting)},
          .partLimit = newtonMetres(1.1 * setting),
          .resolution = {}};
}

TEST(Recall, InterpolatesInTimeAndAlongTheRange) {
  EXPECT_NEAR(recallTightening(period(), tightening("2025-01-26", 20)).onTheDay.deviationPercent, 2, 1e-12);
  EXPECT_NEAR(recallTightening(period(), tightening("2025-01-26", 60)).onTheDay.deviationPercent, 2.25, 1e-12);
  // 30 N·m: a quarter of the way: 0.75 good, 6 bad; half the time.
  const RecallResult middle = recallTightening(period(), tightening("2025-02-20", 30));
  EXPECT_NEAR(middle.onTheDay.deviationPercent, (0.75 + 6) / 2, 1e-12);
  EXPECT_NEAR(middle.worstCase.deviationPercent, 6, 1e-12);
}

TEST(Recall, StaysWithinTheTwoChecks) {
  EXPECT_NEAR(recallTightening(period(), tightening("2024-01-01", 20)).onTheDay.deviationPercent, 1, 1e-12);
  EXPECT_NEAR(recallTightening(period(), tightening("2025-04-11", 20)).onTheDay.deviationPercent, 5, 1e-12);
  EXPECT_NEAR(recallTightening(period(), tightening("2026-01-01", 20)).onTheDay.deviationPercent, 5, 1e-12);
}

TEST(Recall, WithoutAGoodCheckTheBadOneHoldsThroughout) {
  DoubtfulPeriod never = period();
  never.good.clear();
  const RecallResult result = recallTightening(never, tightening("2025-01-02", 20));
  EXPECT_EQ(result.onTheDay.deviationPercent, 5);
  EXPECT_EQ(result.onTheDay.probabilityBelow, result.worstCase.probabilityBelow);
  DoubtfulPeriod sameDay = period();
  sameDay.lastGood = sameDay.foundBad;
  EXPECT_EQ(recallTightening(sameDay, tightening("2025-04-11", 20)).onTheDay.deviationPercent, 5);
}

// The larger of both uncertainties (0.6) and of both scatters (0.3); the worst case is the same with the deviation
// found bad, so that it is never the milder one.
TEST(Recall, ProbabilitiesAreThoseOfTheDeviation) {
  const RecallResult result = recallTightening(period(), tightening("2025-02-20", 20));
  const auto below = [](double deviation, double u) {
    return gsl_cdf_gaussian_Q((20 / 19.0 - 1) * 100 - deviation, u);
  };
  EXPECT_NEAR(result.onTheDay.probabilityBelow, below(3, std::hypot(0.6, 0.3)), 1e-12);
  EXPECT_NEAR(result.worstCase.probabilityBelow, below(5, std::hypot(0.6, 0.3)), 1e-12);
  EXPECT_NEAR(result.onTheDay.probabilityAbove, gsl_cdf_gaussian_P((1 / 1.05 - 1) * 100 - 3, std::hypot(0.6, 0.3)),
              1e-15);
  EXPECT_NEAR(result.onTheDay.probabilityOverPartLimit.value(),
              gsl_cdf_gaussian_P((1 / 1.1 - 1) * 100 - 3, std::hypot(0.6, 0.3)), 1e-15);
  PastTightening metal = tightening("2025-02-20", 20);
  metal.partLimit.reset();
  EXPECT_FALSE(recallTightening(period(), metal).onTheDay.probabilityOverPartLimit);
}

// What a fleet makes likely: Student's t with the fewer degrees of freedom of the two set-points around.
TEST(Recall, TakesAPredictionWithItsDegreesOfFreedom) {
  auto at20 = known(20, 3, 0, 0.6);
  at20.degreesOfFreedom = 9;
  auto at60 = known(60, 3, 0, 0.6);
  at60.degreesOfFreedom = 6;
  const auto figure = recallFigure({at20, at60}, tightening("2025-02-20", 40));
  EXPECT_NEAR(figure.deviationPercent, 3, 1e-12);
  EXPECT_NEAR(figure.probabilityBelow, gsl_cdf_tdist_Q(((40 / 38.0 - 1) * 100 - 3) / 0.6, 6), 1e-9);
}

TEST(Recall, TheWorstComesFirst) {
  const RecallResult early = recallTightening(period(), tightening("2025-01-10", 20));
  const RecallResult late = recallTightening(period(), tightening("2025-04-01", 20));
  EXPECT_TRUE(worseThan(late, early));
  EXPECT_FALSE(worseThan(early, late));
  EXPECT_FALSE(worseThan(late, late));
  RecallResult endangered = early;
  endangered.onTheDay.probabilityOverPartLimit = 0.999;
  EXPECT_TRUE(worseThan(endangered, early));
}

}  // namespace
}  // namespace steadyturn
