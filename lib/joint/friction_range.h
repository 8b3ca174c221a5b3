// What a screw's preload and torque are over the friction that a workshop meets.
#pragma once

#include <vector>

#include "joint.h"

namespace steadyturn {

struct FrictionPoint {
  double friction = 0;  // of thread and head alike
  double preloadN = 0;
  double torqueNm = 0;
};

// From friction 0.08 to 0.20 in steps of 0.01 (VDI 2230 Part 1), at the utilisation of 0.9 it takes for usual.
Result<std::vector<FrictionPoint>> overFriction(const Thread& thread, PropertyClass cls);

}  // namespace steadyturn
