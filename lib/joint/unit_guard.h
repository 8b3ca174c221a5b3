// The guard for units: what torque a thread could sensibly take, and the question that a value outside it raises.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "joint.h"

namespace steadyturn {

enum class ParentMaterial { Unknown, Hard, SoftMetal, Plastic };
// From the words of a specification: "cast iron", "aluminium", "PA66 plastic" …; Unknown for what says neither.
ParentMaterial parentMaterialOf(std::string_view words);

// What a specification tells of its joint.
struct SpecSituation {
  Thread thread;
  std::optional<PropertyClass> propertyClass{};  // absent: 4.6 to 10.9 are thought of
  ParentMaterial parent = ParentMaterial::Unknown;
  bool sealed = false;     // a seal is pressed: it takes far less than the screw could
  bool thenAngle = false;  // the torque is a first stage, an angle follows
};

struct SensibleTorque {
  StatedTorque low, high;  // N·m
};

// VDI 2230 Part 1 from friction 0.08 to 0.20 (thread and head alike): high at the usual utilisation 0.9 and friction
// 0.20, low at friction 0.08 and the least utilisation that makes sense. A soft parent material lowers both.
SensibleTorque sensibleTorque(const SpecSituation& situation);

struct UnitQuestion {
  StatedTorque asked;
  SensibleTorque sensible;
  std::vector<Unit> wouldFit;  // units in which the same number is sensible, the likeliest first; may be empty
};
// Nothing when the torque lies inside.
std::optional<UnitQuestion> questionOf(StatedTorque torque, const SensibleTorque& sensible);
// "40 lbf·ft on M8? 40 N·m would fit: …".
std::string writeQuestion(const UnitQuestion& question, std::string_view thread);

}  // namespace steadyturn
