#include "common_slope.h"

#include <gsl/gsl_cdf.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "gsl_common_slope.h"
#include "reference_table.h"

namespace steadyturn {
namespace {

using testing::GslCommonSlope;
using testing::ReferenceTable;

struct Data {
  std::vector<double> x, y;
  std::vector<std::size_t> sizes;

  CommonSlope fit() const { return CommonSlope(x, y, sizes); }
};

// Certified values are met to ten significant digits.
void expectTenDigits(double actual, double expected) { EXPECT_NEAR(actual, expected, 0.5e-10 * std::abs(expected)); }

Data norris() {
  const auto table = ReferenceTable::load("norris.csv");
  Data data;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    data.x.push_back(table.figure(row, "x").value);
    data.y.push_back(table.figure(row, "y").value);
  }
  data.sizes = {data.x.size()};
  return data;
}

TEST(CommonSlope, NorrisIsCertified) {
  const auto certified = ReferenceTable::load("norris_certified.csv");
  const auto value = [&](std::string_view column) { return certified.figure(0, column).value; };
  const CommonSlope fit = norris().fit();
  EXPECT_EQ(fit.degreesOfFreedom(), 34);
  expectTenDigits(fit.slope().value(), value("slope"));
  expectTenDigits(fit.slopeStandardError().value(), value("slope_error"));
  expectTenDigits(fit.residualStandardDeviation().value(), value("residual_sd"));
  const double squares = std::pow(fit.residualStandardDeviation().value(), 2) * 34;
  expectTenDigits(squares, value("residual_sum_of_squares"));
  expectTenDigits(fit.at(0, 0).value(), value("intercept"));
  // The fitted value's error is what a new observation's leaves without its own scatter.
  const double ofNew = fit.predictionStandardError(0, 0).value();
  const double own = fit.residualStandardDeviation().value();
  expectTenDigits(std::sqrt(ofNew * ofNew - own * own), value("intercept_error"));
}

TEST(CommonSlope, NorrisPredictionIntervals) {
  const auto table = ReferenceTable::load("norris_prediction.csv");
  const CommonSlope fit = norris().fit();
  const double quantile = gsl_cdf_tdist_Pinv(0.975, 34);
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const double x = table.figure(row, "x").value;
    const double reach = quantile * fit.predictionStandardError(x, 0).value();
    EXPECT_NEAR(fit.at(x, 0).value() - reach, table.figure(row, "low").value, 1e-9);
    EXPECT_NEAR(fit.at(x, 0).value() + reach, table.figure(row, "high").value, 1e-9);
  }
}

TEST(CommonSlope, SnedecorAndCochransThreeGroups) {
  const auto table = ReferenceTable::load("snedecor_cochran.csv");
  Data data;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    if (row == 0 || table.text(row, "group") != table.text(row - 1, "group")) data.sizes.push_back(0);
    ++data.sizes.back();
    data.x.push_back(table.figure(row, "pre").value);
    data.y.push_back(table.figure(row, "post").value);
  }
  ASSERT_EQ(data.sizes, (std::vector<std::size_t>{10, 10, 10}));
  const CommonSlope fit = data.fit();

  const auto expected = ReferenceTable::load("snedecor_cochran_fit.csv");
  const auto near = [&](double actual, std::string_view column) {
    const auto figure = expected.figure(0, column);
    EXPECT_NEAR(actual, figure.value, figure.tolerance) << column;
  };
  near(fit.degreesOfFreedom(), "degrees_of_freedom");
  near(fit.slope().value(), "slope");
  near(fit.slopeStandardError().value(), "slope_error");
  near(std::pow(fit.residualStandardDeviation().value(), 2), "residual_variance");
  const double reach = gsl_cdf_tdist_Pinv(0.975, 26) * fit.slopeStandardError().value();
  near(fit.slope().value() - reach, "low");
  near(fit.slope().value() + reach, "high");
}

// Random histories: some segments of one observation, x apart enough for a slope.
rc::Gen<Data> anyData() {
  return rc::gen::exec([] {
    Data data;
    const int segments = *rc::gen::inRange(1, 5);
    double x = 0;
    for (int segment = 0; segment < segments; ++segment) {
      const int count = *rc::gen::inRange(segment == 0 ? 4 : 1, 9);
      data.sizes.push_back(static_cast<std::size_t>(count));
      for (int i = 0; i < count; ++i) {
        x += *rc::gen::inRange(1, 1000) / 100.0;
        data.x.push_back(x);
        data.y.push_back(*rc::gen::inRange(-60000, 60000) / 10000.0);
      }
    }
    return data;
  });
}

void near(double actual, double expected, double scale) { RC_ASSERT(std::abs(actual - expected) <= 1e-9 * scale); }

RC_GTEST_PROP(CommonSlopeProperty, AgreesWithGeneralLeastSquares, ()) {
  const Data data = *anyData();
  const CommonSlope fit = data.fit();
  const GslCommonSlope witness(data.x, data.y, data.sizes);
  const std::size_t newest = data.sizes.size() - 1;
  const double next = data.x.back() + 3.7;
  near(fit.slope().value(), witness.slope(), 1 + std::abs(witness.slope()));
  near(fit.residualStandardDeviation().value(), witness.residual(), 10);
  near(fit.slopeStandardError().value(), witness.slopeError(), 1 + witness.slopeError());
  near(fit.at(next, newest).value(), witness.at(next, newest), 100);
  near(fit.predictionStandardError(next, newest).value(), witness.predictionError(next, newest), 100);
}

RC_GTEST_PROP(CommonSlopeProperty, ShiftingASegmentLeavesTheSlopeAlone, ()) {
  const Data data = *anyData();
  const double shift = *rc::gen::inRange(-5000, 5000) / 100.0;
  Data shifted = data;
  for (std::size_t i = 0; i < data.sizes.front(); ++i) shifted.y[i] += shift;
  near(shifted.fit().slope().value(), data.fit().slope().value(), 100);
  near(shifted.fit().slopeStandardError().value(), data.fit().slopeStandardError().value(), 100);
  near(shifted.fit().residualStandardDeviation().value(), data.fit().residualStandardDeviation().value(), 100);
}

// The trap of judging drift by R²: a flat series has none. Its slope and scatter are exactly 0, whatever the value.
RC_GTEST_PROP(CommonSlopeProperty, AFlatSeriesHasExactlyNoSlopeAndNoScatter, ()) {
  Data data = *anyData();
  const double level = *rc::gen::inRange(-100000, 100000) / 7919.0;
  std::fill(data.y.begin(), data.y.end(), level);
  const CommonSlope fit = data.fit();
  RC_ASSERT(fit.slope() == 0.0);
  RC_ASSERT(fit.residualStandardDeviation() == 0.0);
  RC_ASSERT(fit.at(data.x.back() + 100, 0) == level);
}

TEST(CommonSlope, NothingIsMadeUpFromTooLittle) {
  const CommonSlope single = Data{{1}, {2}, {1}}.fit();
  EXPECT_EQ(single.degreesOfFreedom(), -1);
  EXPECT_FALSE(single.slope());
  EXPECT_FALSE(single.at(2, 0));

  const CommonSlope pair = Data{{1, 2}, {2, 5}, {2}}.fit();
  EXPECT_EQ(pair.degreesOfFreedom(), 0);
  EXPECT_EQ(pair.slope(), 3);
  EXPECT_EQ(pair.at(4, 0), 11);
  EXPECT_FALSE(pair.residualStandardDeviation());
  EXPECT_FALSE(pair.slopeStandardError());
  EXPECT_FALSE(pair.predictionStandardError(4, 0));

  const CommonSlope sameMoment = Data{{1, 1, 1}, {2, 3, 4}, {3}}.fit();
  EXPECT_EQ(sameMoment.degreesOfFreedom(), 1);
  EXPECT_FALSE(sameMoment.slope());
  EXPECT_FALSE(sameMoment.residualStandardDeviation());
}

}  // namespace
}  // namespace steadyturn
