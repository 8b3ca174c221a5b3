#include "control_chart.h"

#include <gmock/gmock.h>

#include <array>

namespace steadyturn {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

// NIST/SEMATECH e-Handbook, 6.3.2.2, flow rates of ten batches (from memory): mean 50.81, mean moving range 1.8778,
// limits 45.8159 and 55.8041.
constexpr std::array flowRates{49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};

TEST(IndividualsChart, IsTheHandbooksFlowRateExample) {
  const auto chart = individualsChart(flowRates).value();
  EXPECT_NEAR(chart.limits.centre, 50.81, 5e-3);
  EXPECT_NEAR(movingRangeSigma(flowRates).value() * 1.128, 1.8778, 5e-5);
  EXPECT_NEAR(chart.limits.high, 55.8041, 5e-5);
  EXPECT_NEAR(chart.limits.low, 45.8159, 5e-5);
  EXPECT_THAT(chart.outside, IsEmpty());
}

TEST(IndividualsChart, NamesTheCheckThatFellOutOfLine) {
  std::vector<double> values(flowRates.begin(), flowRates.end());
  values.push_back(70);
  EXPECT_THAT(individualsChart(values)->outside, ElementsAre(10));
}

TEST(IndividualsChart, NeedsTwoValues) {
  EXPECT_FALSE(individualsChart(std::array{1.0}));
  EXPECT_FALSE(individualsChart({}));
}

TEST(EwmaChart, IsTheHandbooksExample) {
  // NIST/SEMATECH e-Handbook, 6.3.2.4 (from memory): λ 0.3, EWMA0 50, s 2.0539, limits 52.5884 and 47.4115 (the
  // handbook cuts the lower one), smoothed values as printed.
  constexpr std::array data{52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5,
                            49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};
  constexpr std::array printed{50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33,
                               50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99};
  const auto chart = ewmaChart(data, {.weight = 0.3, .start = 50, .sigma = 2.0539});
  EXPECT_NEAR(chart.limits.high, 52.5884, 1e-4);
  EXPECT_NEAR(chart.limits.low, 47.4115, 1e-4);
  ASSERT_EQ(chart.values.size(), printed.size());
  for (std::size_t i = 0; i < printed.size(); ++i) EXPECT_NEAR(chart.values[i], printed[i], 5e-3 + 1e-9) << i;
  EXPECT_THAT(chart.outside, IsEmpty());
}

TEST(EwmaChart, SeesACreepThatSingleValuesHide) {
  // Each value lies within 3 σ of 0; a mean of 1.5 σ crosses 3 σ √(0.3 / 1.7) = 1.26 σ as the weights of the start
  // fade: 1.5 (1 − 0.7ⁿ) > 1.26 from n = 6 on (worked by hand).
  const std::vector<double> values(8, 1.5);
  EXPECT_THAT(ewmaChart(values, {.weight = 0.3, .start = 0, .sigma = 1}).outside, ElementsAre(5, 6, 7));
}

}  // namespace
}  // namespace steadyturn
