// A check to vary in tests: the contract's own example.
#pragma once

#include <initializer_list>

#include "check.h"

namespace steadyturn::testing {

inline StatedTorque newtonMetres(double value) { return {.value = value, .unit = Unit::NewtonMetre}; }

inline SetPointReadings pointAt(double target, std::initializer_list<double> readings) {
  SetPointReadings point{.target = newtonMetres(target)};
  for (double reading : readings) point.readings.push_back(newtonMetres(reading));
  return point;
}

inline CheckInput exampleCheck() {
  return {.kind = {ToolType::Setting, ToolClass::A},
          .maximum = newtonMetres(100),
          .resolution = newtonMetres(1),
          .limitPercent = 4,
          .reference = {.expandedPercent = 0.4, .coverageFactor = 2, .errorPercent = 0},
          .variation = {.reproducibility = 0.3, .drive = 0.2, .interface = 0.2, .loadingPoint = 0.3},
          .rule = DecisionRule::Simple,
          .points = {pointAt(20, {19.8, 20.1, 20.0, 19.9, 20.2})}};
}

}  // namespace steadyturn::testing
