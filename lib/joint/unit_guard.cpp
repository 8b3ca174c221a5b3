#include "unit_guard.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

namespace steadyturn {

namespace {

constexpr double leastFriction = 0.08, mostFriction = 0.20;  // VDI 2230 Part 1, Table A5: classes A and C
constexpr double usualUtilisation = 0.9;                     // VDI 2230 Part 1

// Shares of what the screw alone could take. Common practice: in general tightening tables of service manuals, screws
// in steel and iron start at 0.9 and wheel nuts at 0.74 of the torque at friction 0.08, and none passes the one at
// 0.20; in aluminium and brass makers ask for less; where a seal is pressed, between 0.2 and 0.66 of it; before an
// angle, 0.66.
struct Practice {
  ParentMaterial parent;
  double least, leastSealed, most, mostSealed;
  PropertyClass strongest;  // no parent of this kind holds more than this class
};
constexpr auto practices = std::to_array<Practice>({
    {ParentMaterial::Hard, 0.7, 0.2, 1, 0.7, PropertyClass::C12_9},
    {ParentMaterial::SoftMetal, 0.5, 0.2, 0.8, 0.6, PropertyClass::C8_8},
    {ParentMaterial::Plastic, 0.03, 0.03, 0.7, 0.7, PropertyClass::C8_8},
    {ParentMaterial::Unknown, 0.5, 0.2, 1, 0.7, PropertyClass::C12_9},
});
constexpr double leastBeforeAngle = 0.5;

const Practice& practiceOf(ParentMaterial parent) { return *std::ranges::find(practices, parent, &Practice::parent); }

double fullTorque(const Thread& thread, PropertyClass cls, double friction) {
  const auto joint = evaluateJoint({.thread = thread,
                                    .propertyClass = cls,
                                    .friction = {.thread = friction, .head = friction},
                                    .utilisation = usualUtilisation,
                                    .bearingDiameterMm = {}});
  return joint ? joint->tighteningTorque.value : 0;
}

bool inside(StatedTorque torque, const SensibleTorque& sensible) {
  const double value = torque.torque().newtonMetres();
  return value >= sensible.low.value && value <= sensible.high.value;
}

// How far a torque lies from the middle of the range, as a ratio.
double farFromMiddle(StatedTorque torque, const SensibleTorque& sensible) {
  const double middle = std::sqrt(sensible.low.value * sensible.high.value);
  return std::abs(std::log(torque.torque().newtonMetres() / middle));
}

}  // namespace

ParentMaterial parentMaterialOf(std::string_view words) {
  std::string small(words);
  std::ranges::transform(small, small.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  const auto says = [&](std::initializer_list<std::string_view> list) {
    return std::ranges::any_of(list, [&](std::string_view word) { return small.find(word) != std::string::npos; });
  };
  if (says({"plastic", "polyamide", "nylon", "pa6", "polymer", "resin"})) return ParentMaterial::Plastic;
  if (says({"alumin", "magnes", "brass", "bronze", "copper", "zinc", "alloy", "light metal"})) {
    return ParentMaterial::SoftMetal;
  }
  return says({"steel", "iron"}) ? ParentMaterial::Hard : ParentMaterial::Unknown;
}

SensibleTorque sensibleTorque(const SpecSituation& situation) {
  const Practice& practice = practiceOf(situation.parent);
  const auto held = [&](PropertyClass cls) { return std::min(cls, practice.strongest); };
  const PropertyClass weak = held(situation.propertyClass.value_or(PropertyClass::C4_6));
  const PropertyClass strong = held(situation.propertyClass.value_or(PropertyClass::C10_9));
  double least = situation.sealed ? practice.leastSealed : practice.least;
  if (situation.thenAngle) least = std::min(least, leastBeforeAngle);
  const double most = situation.sealed ? practice.mostSealed : practice.most;
  return {.low = {.value = least * fullTorque(situation.thread, weak, leastFriction), .unit = Unit::NewtonMetre},
          .high = {.value = most * fullTorque(situation.thread, strong, mostFriction), .unit = Unit::NewtonMetre}};
}

std::optional<UnitQuestion> questionOf(StatedTorque torque, const SensibleTorque& sensible) {
  if (inside(torque, sensible)) return std::nullopt;
  UnitQuestion question{.asked = torque, .sensible = sensible, .wouldFit = {}};
  for (const Unit unit : allUnits) {
    if (unit != torque.unit && inside({torque.value, unit}, sensible)) question.wouldFit.push_back(unit);
  }
  // N·m stays first among equals: it is what most workshop data are in.
  std::ranges::stable_sort(question.wouldFit, {}, [&](Unit unit) {
    return unit == Unit::NewtonMetre ? 0.0 : farFromMiddle({torque.value, unit}, sensible);
  });
  return question;
}

std::string writeQuestion(const UnitQuestion& question, std::string_view thread) {
  const StatedTorque low = convert(question.sensible.low, question.asked.unit);
  const StatedTorque high = convert(question.sensible.high, question.asked.unit);
  std::string text = fmt::format("{} on {}?", writeTorque(question.asked), thread);
  if (!question.wouldFit.empty()) {
    text += fmt::format(" {} would fit.", writeTorque({question.asked.value, question.wouldFit.front()}));
  }
  return text + fmt::format(
                    " {} to {} is what such a joint could sensibly take (VDI 2230, friction 0.08 to 0.20; "
                    "shares of it by common practice). Look at the unit in the source.",
                    writeTorque(low, 2), writeTorque(high, 2));
}

}  // namespace steadyturn
