// The distribution of one pull's deviation, and what it says about the torque at the fastener.
#pragma once

#include "delivery.h"

namespace steadyturn {

// Student t (normal where df is absent; certain where scale is 0), all in %.
struct PullDeviation {
  double location = 0;
  double scale = 0;
  std::optional<double> degreesOfFreedom;
};
PullDeviation pullDeviation(const DeliveryInput& input);

// Torque at the fastener when the tool's deviation is its location, N·m; infinite at −100 % and below.
double expectedNewtonMetres(const DeliveryInput& input);

// Probabilities of where one pull lands. Each is computed where it is small, so that settings far from the window
// can still be told apart.
struct Landing {
  double below = 0;
  double within = 0;
  double above = 0;
  std::optional<double> overPartLimit;
};
Landing landingOf(const DeliveryInput& input, const PullDeviation& deviation);

}  // namespace steadyturn
