#include "joint.h"

#include <cmath>
#include <numbers>

#include "thread_table.h"

namespace steadyturn {

namespace {

std::optional<double> bearingDiameterMm(const JointInput& input) {
  if (input.bearingDiameterMm) return input.bearingDiameterMm;
  const ThreadSize* size = findThreadSize(input.thread.diameterMm);
  if (!size) return std::nullopt;
  return (size->headMm + size->clearanceHoleMm) / 2;
}

void requireFriction(Problems& problems, std::string field, double found) {
  if (found >= 0 && found <= 1) return;
  problems.push_back(
      {.field = std::move(field), .found = writeNumber(found), .accepted = "a coefficient from 0 to 1"});
}

Problems problemsOf(const JointInput& input) {
  Problems problems;
  const auto& [diameter, pitch, coarse] = input.thread;
  if (!(pitch > 0) || !(minorDiameterMm(input.thread) > 0) || !std::isfinite(diameter)) {
    problems.push_back({.field = "thread", .found = writeThread(input.thread), .accepted = "a thread with a core"});
  }
  requireFriction(problems, "friction.thread", input.friction.thread);
  requireFriction(problems, "friction.head", input.friction.head);
  if (!(input.utilisation > 0 && input.utilisation <= 1)) {
    problems.push_back({.field = "utilisation",
                        .found = writeNumber(input.utilisation),
                        .accepted = "a share above 0, up to 1, of the proof strength"});
  }
  const auto bearing = bearingDiameterMm(input);
  if (!bearing || !std::isfinite(*bearing) || *bearing < diameter) {
    problems.push_back({.field = "bearing_diameter_mm",
                        .found = bearing ? writeNumber(*bearing) : "none",
                        .accepted = "the mean diameter under the head, at least the thread's diameter"});
  }
  return problems;
}

// VDI 2230 Part 1: the preload at which tension and the torsion of tightening together reach ν R_p0.2 (distortion
// energy, fully plastic torsion: hence 3/2 and not 2).
double assemblyPreloadN(const JointInput& input) {
  const double pitchDiameter = pitchDiameterMm(input.thread);
  const double stressDiameter = (pitchDiameter + minorDiameterMm(input.thread)) / 2;
  const double lead = input.thread.pitchMm / (std::numbers::pi * pitchDiameter);
  const double torsion = 1.5 * (pitchDiameter / stressDiameter) * (lead + 1.155 * input.friction.thread);
  return input.utilisation * proofStrengthMPa(input.propertyClass, input.thread.diameterMm) *
         stressAreaMm2(input.thread) / std::sqrt(1 + 3 * torsion * torsion);
}

}  // namespace

Result<JointResult> evaluateJoint(const JointInput& input) {
  if (Problems problems = problemsOf(input); !problems.empty()) return tl::unexpected(std::move(problems));

  const double preload = assemblyPreloadN(input);
  const double pitchDiameter = pitchDiameterMm(input.thread);
  const double bearing = *bearingDiameterMm(input);
  const double leverMm =
      0.16 * input.thread.pitchMm + 0.58 * pitchDiameter * input.friction.thread + bearing / 2 * input.friction.head;
  return JointResult{.assemblyPreloadN = preload,
                     .tighteningTorque = {.value = preload * leverMm / 1000, .unit = Unit::NewtonMetre},
                     .stressAreaMm2 = stressAreaMm2(input.thread),
                     .pitchDiameterMm = pitchDiameter,
                     .minorDiameterMm = minorDiameterMm(input.thread),
                     .bearingDiameterMm = bearing,
                     .proofLoadN = tabulatedProofLoadN(input.thread, input.propertyClass)};
}

}  // namespace steadyturn
