#include "friction_range.h"

namespace steadyturn {

Result<std::vector<FrictionPoint>> overFriction(const Thread& thread, PropertyClass cls) {
  std::vector<FrictionPoint> points;
  for (int hundredths = 8; hundredths <= 20; ++hundredths) {
    const double friction = hundredths / 100.0;
    const auto joint = evaluateJoint({.thread = thread,
                                      .propertyClass = cls,
                                      .friction = {.thread = friction, .head = friction},
                                      .utilisation = 0.9,
                                      .bearingDiameterMm = {}});
    if (!joint) return tl::unexpected(joint.error());
    points.push_back(
        {.friction = friction, .preloadN = joint->assemblyPreloadN, .torqueNm = joint->tighteningTorque.value});
  }
  return points;
}

}  // namespace steadyturn
