#include "joint_json.h"

#include "object_reader.h"
#include "value_json.h"

namespace steadyturn {
namespace {

Friction readFriction(const Json& value, Problems& problems) {
  ObjectReader fields(value, "friction", problems, {"thread", "head"});
  return {.thread = fields.number("thread"), .head = fields.number("head")};
}

}  // namespace

Result<JointInput> readJointInput(const Json& document) {
  Problems problems;
  JointInput joint;
  ObjectReader fields(document, "", problems,
                      {"thread", "property_class", "friction", "utilisation", "bearing_diameter_mm"});
  if (const auto thread = fields.text("thread", "an ISO metric thread such as \"M8\" or \"M14x1.5\"")) {
    joint.thread = fields.adopt(parseThread(*thread, "thread"));
  }
  if (const auto cls = fields.text("property_class", "a property class such as \"8.8\"")) {
    joint.propertyClass = fields.adopt(parsePropertyClass(*cls, "property_class"));
  }
  if (const Json* friction = fields.require("friction", "an object with the coefficients thread and head")) {
    joint.friction = readFriction(*friction, problems);
  }
  joint.utilisation = fields.number("utilisation");
  joint.bearingDiameterMm = fields.optionalNumber("bearing_diameter_mm");
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return joint;
}

OrderedJson jointResultJson(const JointResult& result) {
  return {{"assembly_preload_N", numberJson(result.assemblyPreloadN)},
          {"tightening_torque", torqueJson(result.tighteningTorque)},
          {"stress_area_mm2", numberJson(result.stressAreaMm2)},
          {"pitch_diameter_mm", numberJson(result.pitchDiameterMm)},
          {"minor_diameter_mm", numberJson(result.minorDiameterMm)},
          {"bearing_diameter_mm", numberJson(result.bearingDiameterMm)},
          {"proof_load_N", numberJson(result.proofLoadN)}};
}

}  // namespace steadyturn
