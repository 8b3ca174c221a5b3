// Assembly preload and tightening torque of a bolted joint (VDI 2230 Part 1), strength (ISO 898-1).
#pragma once

#include <optional>
#include <string_view>

#include "thread.h"
#include "torque.h"

namespace steadyturn {

enum class PropertyClass { C4_6, C5_6, C8_8, C10_9, C12_9 };
Result<PropertyClass> parsePropertyClass(std::string_view typed, std::string_view field);
std::string_view writePropertyClass(PropertyClass cls);  // "8.8"
// R_p0.2 (or R_eL) minimum, MPa, as VDI 2230 uses it; 8.8 depends on the diameter.
double proofStrengthMPa(PropertyClass cls, double diameterMm);
// Proof load as ISO 898-1 tabulates it (never S_p × A: rounding differs); nothing where the table has no entry.
std::optional<double> tabulatedProofLoadN(const Thread& thread, PropertyClass cls);

struct Friction {
  double thread = 0.12;  // μ_G
  double head = 0.12;    // μ_K
};

struct JointInput {
  Thread thread;
  PropertyClass propertyClass = PropertyClass::C8_8;
  Friction friction{};
  double utilisation = 0.9;                   // ν, 0 < ν ≤ 1
  std::optional<double> bearingDiameterMm{};  // D_Km, effective diameter of friction under the head; absent: hexagon
                                              // head ISO 4014 d_w on clearance hole ISO 273 medium
};

struct JointResult {
  double assemblyPreloadN = 0;
  StatedTorque tighteningTorque;  // N·m
  double stressAreaMm2 = 0;
  double pitchDiameterMm = 0;
  double minorDiameterMm = 0;
  double bearingDiameterMm = 0;  // D_Km used
  std::optional<double> proofLoadN;
};

// Problems name the field as the contract's JSON does. A thread whose head isn't in the table needs
// bearingDiameterMm.
Result<JointResult> evaluateJoint(const JointInput& input);

}  // namespace steadyturn
