#include "joint.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "reference_table.h"

namespace steadyturn {
namespace {

using testing::ReferenceTable;

JointInput joint(std::string_view thread, std::string_view cls, double friction) {
  return {.thread = parseThread(thread, "thread").value(),
          .propertyClass = parsePropertyClass(cls, "property_class").value(),
          .friction = {.thread = friction, .head = friction}};
}

TEST(Joint, CoarseThreadsAgreeWithTheGuideline) {
  const auto table = ReferenceTable::load("vdi_2230_coarse.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const auto input =
        joint(table.text(row, "thread"), table.text(row, "class"), table.figure(row, "friction").value);
    const JointResult result = evaluateJoint(input).value();
    const double preload = table.figure(row, "preload").value * 1000;
    const double torque = table.figure(row, "torque").value;
    // Within 1 %: the guideline rounds, and takes its own bearing diameters.
    EXPECT_NEAR(result.assemblyPreloadN, preload, 0.01 * preload) << table.text(row, "thread");
    EXPECT_NEAR(result.tighteningTorque.in(Unit::NewtonMetre), torque, 0.01 * torque) << table.text(row, "thread");
  }
}

TEST(Joint, FineThreadsAgreeWithTheGuideline) {
  const auto table = ReferenceTable::load("vdi_2230_fine.csv");
  ASSERT_EQ(table.rows(), 27U);
  for (std::size_t row = 0; row < table.rows(); ++row) {
    for (const std::string cls : {"8.8", "10.9", "12.9"}) {
      const auto input = joint(table.text(row, "thread"), cls, table.figure(row, "friction").value);
      const JointResult result = evaluateJoint(input).value();
      const auto preload = table.figure(row, "preload_" + cls);
      const auto torque = table.figure(row, "torque_" + cls);
      // 0.5 % and 1.5 %, or half the last printed digit where that is coarser.
      EXPECT_NEAR(result.assemblyPreloadN / 1000, preload.value, std::max(0.005 * preload.value, preload.tolerance))
          << table.text(row, "thread") << " " << cls;
      EXPECT_NEAR(result.tighteningTorque.value, torque.value, std::max(0.015 * torque.value, torque.tolerance))
          << table.text(row, "thread") << " " << cls;
    }
  }
}

TEST(Joint, SaysWhatItWorkedWith) {
  const JointResult result = evaluateJoint(joint("M8", "8.8", 0.12)).value();
  EXPECT_NEAR(result.stressAreaMm2, 36.6, 0.05);
  EXPECT_NEAR(result.pitchDiameterMm, 7.188, 0.0005);
  EXPECT_NEAR(result.minorDiameterMm, 6.466, 0.0005);
  EXPECT_NEAR(result.bearingDiameterMm, (11.63 + 9) / 2, 1e-12);  // ISO 4014 head on an ISO 273 medium hole
  EXPECT_EQ(result.proofLoadN, 21200);
  EXPECT_EQ(result.tighteningTorque.unit, Unit::NewtonMetre);
  EXPECT_FALSE(evaluateJoint(joint("M14x1.5", "8.8", 0.12)).value().proofLoadN);
}

// Without friction all work goes into the thread's lead: M_A · 2π = F_M · P (statics), and 0.16 P is P/2π rounded.
TEST(Joint, WithoutFrictionTorqueIsTheLeadsWork) {
  JointInput input = joint("M12", "10.9", 0);
  const JointResult result = evaluateJoint(input).value();
  const double work = result.assemblyPreloadN * 1.75 / (2 * M_PI) / 1000;
  EXPECT_NEAR(result.tighteningTorque.value, work, 0.006 * work);
}

TEST(Joint, TorqueIsLinearInUtilisationAndInTheBearingsLever) {
  JointInput input = joint("M10", "8.8", 0.12);
  const double whole = evaluateJoint(input).value().tighteningTorque.value;
  input.utilisation = 0.45;
  EXPECT_NEAR(evaluateJoint(input).value().tighteningTorque.value, whole / 2, 1e-9);
  input.utilisation = 0.9;
  input.bearingDiameterMm = 20;
  const JointResult wide = evaluateJoint(input).value();
  EXPECT_EQ(wide.bearingDiameterMm, 20);
  const double lever = (20 - (14.63 + 11) / 2) / 2 * 0.12 / 1000;
  EXPECT_NEAR(wide.tighteningTorque.value - whole, wide.assemblyPreloadN * lever, 1e-9);
}

TEST(Joint, NamesEveryWrongField) {
  JointInput input = joint("M8", "8.8", 0.12);
  input.friction = {.thread = -0.1, .head = std::numeric_limits<double>::quiet_NaN()};
  input.utilisation = 1.5;
  input.bearingDiameterMm = 4;
  const auto result = evaluateJoint(input);
  ASSERT_FALSE(result);
  std::vector<std::string> fields;
  for (const Problem& problem : result.error()) fields.push_back(problem.field);
  EXPECT_EQ(fields,
            (std::vector<std::string>{"friction.thread", "friction.head", "utilisation", "bearing_diameter_mm"}));
}

TEST(Joint, AHeadThatIsNotTabulatedNeedsItsBearing) {
  JointInput input = joint("M8", "8.8", 0.12);
  input.thread = {.diameterMm = 7, .pitchMm = 1, .coarse = true};
  const auto result = evaluateJoint(input);
  ASSERT_FALSE(result);
  EXPECT_EQ(result.error()[0].field, "bearing_diameter_mm");
  input.bearingDiameterMm = 9;
  EXPECT_TRUE(evaluateJoint(input));
}

}  // namespace
}  // namespace steadyturn
