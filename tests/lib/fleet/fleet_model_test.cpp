#include "fleet_model.h"

#include <gtest/gtest.h>

#include <cmath>

#include "fleet_tables.h"

namespace steadyturn {
namespace {

using testing::ReferenceTable;

// R's figures hold to six digits; its optimisers do not promise more.
void expectSixDigits(double actual, double expected, const std::string& what) {
  EXPECT_NEAR(actual, expected, 0.5e-6 * std::abs(expected)) << what;
}

TEST(FleetModel, VariancesAndSlopesAreThoseOfRsMixedModels) {
  const auto fleets = testing::recordedFleets();
  const auto table = ReferenceTable::load("fleet_fit.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const std::string& set = table.text(row, "set");
    const auto expect = [&](double actual, const char* column) {
      // pbkrtest gives nothing where the variance of slopes is 0.
      if (table.has(row, column)) expectSixDigits(actual, table.figure(row, column).value, set + " " + column);
    };
    const auto model = FleetModel::estimated(fleets.at(set));
    ASSERT_TRUE(model) << set;
    expect(model->variances().slope, "slope_variance");
    expect(model->variances().residual, "residual_variance");
    expect(model->logLikelihood().value(), "log_likelihood");
    expect(model->groupSlope().slope, "slope");
    expect(model->groupSlope().standardError, "slope_se");
    expect(model->groupSlopeAdjusted().standardError, "kr_se");
    expect(model->groupSlopeAdjusted().degreesOfFreedom.value(), "kr_df");
    expect(model->varianceOfVariances().slope, "w_slope");
    expect(model->varianceOfVariances().both, "w_both");
    expect(model->varianceOfVariances().residual, "w_residual");
  }
}

TEST(FleetModel, PredictionsAreThoseOfFullMatrices) {
  const auto fleets = testing::recordedFleets();
  const auto table = ReferenceTable::load("fleet_tool.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const std::string& set = table.text(row, "set");
    const auto expect = [&](double actual, const char* column) {
      expectSixDigits(actual, table.figure(row, column).value,
                      set + " tool " + table.text(row, "tool") + " " + column);
    };
    const auto model = FleetModel::estimated(fleets.at(set));
    const auto& tool = fleets.at(set).at(static_cast<std::size_t>(table.figure(row, "tool").value) - 1);
    expect(model->slopeOf(tool).slope, "slope");
    expect(model->slopeOf(tool).standardError, "slope_se");
    const auto prediction = model->predict(tool, table.figure(row, "x").value);
    expect(prediction.mean, "predicted");
    expect(prediction.standardError, "se");
    expect(prediction.degreesOfFreedom.value(), "df");
  }
}

SlopeSums oneSegment(std::vector<double> x, std::vector<double> y) {
  const std::vector<std::size_t> sizes{x.size()};
  return sumsOf(x, y, sizes);
}

std::vector<SlopeSums> smallFleet() {
  return {oneSegment({0, 1, 2}, {0.1, 0.6, 0.9}), oneSegment({0, 1.5, 2}, {-0.4, 0.2, 0.1}),
          oneSegment({0, 1, 3}, {1.1, 1.0, 1.9}), oneSegment({0, 2}, {0.0, 1.3}), oneSegment({0.4}, {0.7})};
}

TEST(FleetModel, AToolWithOneCheckTakesTheGroupsDrift) {
  const auto fleet = smallFleet();
  const auto model = FleetModel::estimated(fleet).value();
  const auto slope = model.slopeOf(fleet.back());
  EXPECT_DOUBLE_EQ(slope.slope, model.groupSlope().slope);
  EXPECT_DOUBLE_EQ(slope.borrowed, 1);
  EXPECT_GT(slope.standardError, model.groupSlopeAdjusted().standardError);
  const auto next = model.predict(fleet.back(), 1.4);
  EXPECT_DOUBLE_EQ(next.mean, 0.7 + model.groupSlope().slope);
  // The same tool on the day of its check: two checks' scatter, no drift.
  EXPECT_NEAR(model.predict(fleet.back(), 0.4).standardError, std::sqrt(2 * model.variances().residual), 1e-12);
}

TEST(FleetModel, AToolWithAThousandChecksKeepsItsOwnDrift) {
  auto fleet = smallFleet();
  std::vector<double> x, y;
  for (int i = 0; i < 1000; ++i) {
    x.push_back(i * 0.03);
    y.push_back(-0.9 * x.back() + (i % 2 == 0 ? 0.2 : -0.2));
  }
  fleet.push_back(oneSegment(x, y));
  const auto model = FleetModel::estimated(fleet).value();
  const auto slope = model.slopeOf(fleet.back());
  const std::vector<std::size_t> sizes{x.size()};
  EXPECT_NEAR(slope.slope, *CommonSlope(x, y, sizes).slope(), 1e-3);
  EXPECT_LT(slope.borrowed, 1e-3);
}

TEST(FleetModel, ToolsThatDoNotDifferShareOneSlope) {
  // Five tools on one line each with the same slope and scatter that has no slope: the variance of slopes is 0.
  std::vector<SlopeSums> fleet;
  for (int i = 0; i < 5; ++i) fleet.push_back(oneSegment({0, 1, 2, 3}, {i + 0.1, i + 0.3, i + 0.9, i + 1.6}));
  const auto model = FleetModel::estimated(fleet).value();
  EXPECT_EQ(model.variances().slope, 0);
  EXPECT_DOUBLE_EQ(model.slopeOf(fleet[2]).borrowed, 1);
  EXPECT_TRUE(std::isfinite(model.predict(fleet[2], 5).standardError));
  EXPECT_GE(model.predict(fleet[2], 5).degreesOfFreedom.value(), 1);
}

TEST(FleetModel, IsAbsentWhereTheRecordCannotTellBothVariances) {
  EXPECT_FALSE(FleetModel::estimated({}));
  EXPECT_FALSE(FleetModel::estimated(std::vector{oneSegment({1}, {2})}));
  // Two checks each: the scatter of checks and of slopes can't be told apart.
  const std::vector pairs{oneSegment({0, 1}, {0, 1}), oneSegment({0, 1}, {0, 2}), oneSegment({0, 1}, {1, 1})};
  EXPECT_FALSE(FleetModel::estimated(pairs));
  // No scatter at all.
  const std::vector exact{oneSegment({0, 1, 2}, {0, 1, 2}), oneSegment({0, 1, 2}, {1, 2, 3}),
                          oneSegment({0, 1, 2}, {2, 3, 4})};
  EXPECT_FALSE(FleetModel::estimated(exact));
}

TEST(FleetModel, AssumptionSpeaksAloneForAToolWithOneCheckAndYieldsToRecords) {
  const FleetAssumption assumption{.groupSlopeVariance = 0.5, .variances = {.slope = 0.5, .residual = 0.25}};
  const auto single = oneSegment({0}, {0.3});
  const auto alone = FleetModel::assumed(std::vector{single}, assumption);
  EXPECT_FALSE(alone.isEstimated());
  const auto next = alone.predict(single, 2);
  EXPECT_DOUBLE_EQ(next.mean, 0.3);
  EXPECT_DOUBLE_EQ(next.standardError, std::sqrt(2 * 0.25 + 4 * (0.5 + 0.5)));  // by hand
  EXPECT_FALSE(next.degreesOfFreedom);
  const auto drifting = oneSegment({0, 1, 2, 3, 4, 5, 6}, {0, 1, 2, 3, 4, 5, 6});
  EXPECT_NEAR(FleetModel::assumed(std::vector{drifting}, assumption).slopeOf(drifting).slope, 1, 0.01);
}

}  // namespace
}  // namespace steadyturn
