// The contract's own example of `evaluate delivery`.
#pragma once

#include "delivery.h"

namespace steadyturn::testing {

inline StatedTorque newtonMetres(double value) { return {.value = value, .unit = Unit::NewtonMetre}; }

inline DeliveryInput deliveryExample() {
  return {.setting = newtonMetres(18),
          .window = {.low = newtonMetres(16), .high = newtonMetres(20)},
          .partLimit = newtonMetres(21),
          .adapter = Adapter{.wrenchLengthMm = 400, .offsetMm = 50, .angleDeg = 0},
          .deviationPercent = 1.2,
          .deviation = {.standardPercent = 0.8, .degreesOfFreedom = 6},
          .pull = {.standardPercent = 0.5, .degreesOfFreedom = 14},
          .resolution = newtonMetres(0.5),
          .referenceStandardUncertaintyPercent = 0.25};
}

}  // namespace steadyturn::testing
