#include <gtest/gtest.h>

#include "run_sturn.h"

namespace steadyturn::test {
namespace {

using nlohmann::json;

json joint(const std::string& thread, const std::string& propertyClass, double friction) {
  return {{"thread", thread},
          {"property_class", propertyClass},
          {"friction", {{"thread", friction}, {"head", friction}}},
          {"utilisation", 0.9},
          {"bearing_diameter_mm", nullptr}};
}

json jointResult(const json& document) {
  const Answer answer = evaluate("joint", document.dump());
  EXPECT_EQ(answer.status, 0) << answer.err;
  return answer.json();
}

// VDI 2230 Part 1 tables, ν = 0.9 (from memory, agree within 1 %): kN and N·m.
TEST(EvaluateJoint, AgreesWithTheTables) {
  const struct {
    const char* thread;
    const char* propertyClass;
    double friction, preload, torque;
  } rows[]{{"M8", "8.8", 0.12, 18.6, 24.6},  {"M10", "8.8", 0.12, 29.6, 48},  {"M12", "8.8", 0.12, 43.0, 84},
           {"M8", "10.9", 0.12, 27.3, 36.1}, {"M8", "8.8", 0.10, 19.1, 21.6}, {"M8", "8.8", 0.14, 18.1, 27.3}};
  for (const auto& row : rows) {
    const json result = jointResult(joint(row.thread, row.propertyClass, row.friction));
    EXPECT_NEAR(result.at("assembly_preload_N").get<double>(), row.preload * 1000, row.preload * 10) << row.thread;
    EXPECT_NEAR(result.at("tightening_torque").at("value").get<double>(), row.torque, row.torque * 0.01)
        << row.thread;
    EXPECT_EQ(result.at("tightening_torque").at("unit"), "N.m");
  }
}

// ISO 898-1, tables of nominal stress areas and proof loads; ISO 724 diameters (from memory).
TEST(EvaluateJoint, GivesThreadGeometryAndProofLoad) {
  const json result = jointResult(joint("M8", "8.8", 0.12));
  EXPECT_NEAR(result.at("stress_area_mm2").get<double>(), 36.6, 0.05);
  EXPECT_NEAR(result.at("pitch_diameter_mm").get<double>(), 8 - 0.649519 * 1.25, 1e-9);
  EXPECT_NEAR(result.at("minor_diameter_mm").get<double>(), 8 - 1.226869 * 1.25, 1e-9);
  EXPECT_EQ(result.at("proof_load_N"), 21200);
}

TEST(EvaluateJoint, ReadsFineThreads) {
  // VDI 2230:2001 as quoted in a handbook: M16×1.5, 8.8, μ 0.12: 87.6 kN, 218 N·m.
  const json result = jointResult(joint("M16x1.5", "8.8", 0.12));
  EXPECT_NEAR(result.at("assembly_preload_N").get<double>(), 87600, 87600 * 0.005);
  EXPECT_NEAR(result.at("tightening_torque").at("value").get<double>(), 218, 218 * 0.015);
}

TEST(EvaluateJoint, RefusesAThreadThatIsNoISOThread) {
  const Answer answer = evaluate("joint", joint("M8.3", "8.8", 0.12).dump());
  EXPECT_EQ(answer.status, 65);
  EXPECT_EQ(answer.err.rfind(R"(sturn: thread: found "M8.3")", 0), 0u) << answer.err;
}

}  // namespace
}  // namespace steadyturn::test
