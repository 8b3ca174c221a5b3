#include <gtest/gtest.h>

#include <functional>
#include <limits>

#include "check.h"
#include "check_fixture.h"

namespace steadyturn {
namespace {

using testing::exampleCheck;
using testing::newtonMetres;
using testing::pointAt;

constexpr double notANumber = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

std::vector<std::string> fieldsRefused(const CheckInput& check) {
  const auto result = evaluateCheck(check);
  std::vector<std::string> fields;
  if (result) return fields;
  for (const Problem& problem : result.error()) {
    EXPECT_EQ(problem.kind, ProblemKind::BadInput);
    EXPECT_FALSE(problem.accepted.empty()) << problem.field;
    fields.push_back(problem.field);
  }
  return fields;
}

using Fields = std::vector<std::string>;

void expectRefused(const char* field, const std::function<void(CheckInput&, double)>& spoil,
                   std::initializer_list<double> badValues) {
  for (double bad : badValues) {
    CheckInput check = exampleCheck();
    spoil(check, bad);
    EXPECT_EQ(fieldsRefused(check), Fields{field}) << bad;
  }
}

TEST(RefuseCheck, TakesTheExample) { EXPECT_TRUE(fieldsRefused(exampleCheck()).empty()); }

TEST(RefuseCheck, TorquesAreFiniteAndAboveZero) {
  const auto bad = {0.0, -1.0, notANumber, infinite, -infinite};
  expectRefused(
      "tool.max", [](CheckInput& c, double v) { c.maximum.value = v; }, bad);
  expectRefused(
      "tool.min", [](CheckInput& c, double v) { c.minimum = newtonMetres(v); }, bad);
  expectRefused(
      "tool.resolution", [](CheckInput& c, double v) { c.resolution->value = v; }, bad);
  expectRefused(
      "points[0].target", [](CheckInput& c, double v) { c.points[0].target.value = v; }, bad);
  expectRefused(
      "points[0].readings.values[2]", [](CheckInput& c, double v) { c.points[0].readings[2].value = v; }, bad);
}

TEST(RefuseCheck, PercentagesAreFiniteAndNotNegative) {
  const auto bad = {-0.1, notANumber, infinite, -infinite, 1e300};
  expectRefused(
      "reference.expanded_uncertainty_percent", [](CheckInput& c, double v) { c.reference.expandedPercent = v; },
      bad);
  expectRefused(
      "variation_percent.reproducibility", [](CheckInput& c, double v) { c.variation.reproducibility = v; }, bad);
  expectRefused(
      "variation_percent.drive", [](CheckInput& c, double v) { c.variation.drive = v; }, bad);
  expectRefused(
      "variation_percent.interface", [](CheckInput& c, double v) { c.variation.interface = v; }, bad);
  expectRefused(
      "variation_percent.loading_point", [](CheckInput& c, double v) { c.variation.loadingPoint = v; }, bad);
  expectRefused(
      "limit_percent", [](CheckInput& c, double v) { c.limitPercent = v; }, bad);
  expectRefused("limit_percent", [](CheckInput& c, double v) { c.limitPercent = v; }, {0});
}

TEST(RefuseCheck, ACoverageFactorIsAboveZeroAndAReferenceErrorMayBeNegative) {
  expectRefused("reference.coverage_factor", [](CheckInput& c, double v) { c.reference.coverageFactor = v; },
                {0, -2, notANumber, infinite});
  expectRefused("reference.error_percent", [](CheckInput& c, double v) { c.reference.errorPercent = v; },
                {notANumber, infinite, -infinite});
  CheckInput check = exampleCheck();
  check.reference.errorPercent = -0.2;
  EXPECT_TRUE(fieldsRefused(check).empty());
}

TEST(RefuseCheck, ACheckHasPointsAndAPointHasReadings) {
  CheckInput check = exampleCheck();
  check.points.clear();
  EXPECT_EQ(fieldsRefused(check), Fields{"points"});
  check = exampleCheck();
  check.points.push_back(pointAt(60, {}));
  EXPECT_EQ(fieldsRefused(check), Fields{"points[1].readings.values"});
}

TEST(RefuseCheck, ATypeHasItsClassesOnly) {
  CheckInput check = exampleCheck();
  check.kind = {ToolType::Indicating, ToolClass::G};
  EXPECT_EQ(fieldsRefused(check), Fields{"tool.class"});
}

TEST(RefuseCheck, NeitherMinimumNorGraduationIsAboveTheMaximum) {
  CheckInput check = exampleCheck();
  check.minimum = newtonMetres(101);
  check.resolution = newtonMetres(200);
  EXPECT_EQ(fieldsRefused(check), (Fields{"tool.min", "tool.resolution"}));
}

TEST(RefuseCheck, FiguresThatWouldOverflowAreNoReadings) {
  CheckInput check = exampleCheck();
  check.points = {pointAt(20, {1e-300, 20})};
  EXPECT_EQ(fieldsRefused(check), Fields{"points[0].readings.values[0]"});
  check.points = {pointAt(1e-300, {1e-300})};
  EXPECT_EQ(fieldsRefused(check), Fields{"points[0].target"});
}

TEST(RefuseCheck, NamesEverythingAtOnce) {
  CheckInput check = exampleCheck();
  check.maximum.value = -1;
  check.reference.coverageFactor = 0;
  check.variation.drive = -1;
  check.points[0].readings[1].value = notANumber;
  EXPECT_EQ(fieldsRefused(check), (Fields{"tool.max", "reference.coverage_factor", "variation_percent.drive",
                                          "points[0].readings.values[1]"}));
}

}  // namespace
}  // namespace steadyturn
