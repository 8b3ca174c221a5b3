// Torque that reaches the fastener: from a tool's deviation and its scatter to the probability of landing in
// the window, below it, above it, and over a part's limit.
#pragma once

#include <functional>
#include <optional>

#include "torque.h"

namespace steadyturn {

// An adapter or extension that moves the fastener away from the drive. Torque at the fastener = torque at the wrench
// × (L + E·cos θ) / L (statics; common practice). L from the hand's middle to the drive's centre.
struct Adapter {
  double wrenchLengthMm = 0;  // L > 0
  double offsetMm = 0;        // E ≥ 0, drive's centre to fastener's centre
  double angleDeg = 0;        // θ between E and the handle's axis: 0 straight on, 90 across, 180 back to the grip
};
double adapterFactor(const Adapter& adapter);

// A standard uncertainty in %, with its degrees of freedom; absent = known so well that it counts as infinite.
struct Uncertainty {
  double standardPercent = 0;
  std::optional<double> degreesOfFreedom{};
};

struct Window {
  StatedTorque low;
  StatedTorque high;
};

struct DeliveryInput {
  StatedTorque setting;  // > 0
  Window window;         // 0 ≤ low < high
  std::optional<StatedTorque> partLimit{};
  std::optional<Adapter> adapter{};
  double deviationPercent = 0;  // location of the tool's deviation at this setting, > −100
  Uncertainty deviation{};
  Uncertainty pull{};                        // one pull's scatter
  std::optional<StatedTorque> resolution{};  // one graduation; rectangular, full width
  double referenceStandardUncertaintyPercent = 0;
};

struct DeliveredRange {
  StatedTorque low;
  std::optional<StatedTorque> high;  // absent: unbounded, the deviation's interval reaches −100 %
};

struct DeliveryResult {
  StatedTorque expected;    // torque at the location, in the setting's unit
  DeliveredRange interval;  // 95 %, in the setting's unit
  double probabilityWithin = 0;
  double probabilityBelow = 0;
  double probabilityAbove = 0;
  std::optional<double> probabilityOverPartLimit;
  std::optional<double> effectiveDegreesOfFreedom;  // Welch–Satterthwaite; absent: infinite
};

// Problems of the input, by the contract's field names; empty when it can be computed.
Problems problemsOf(const DeliveryInput& input);

// Student t for this one pull's deviation: location deviationPercent, scale² = sum of the squared standard
// uncertainties, effective degrees of freedom by Welch–Satterthwaite (JCGM 100:2008, G.4.1).
// Delivered torque = setting × adapter factor / (1 + a/100). REQUIRES: problemsOf(input) is empty.
DeliveryResult deliver(const DeliveryInput& input);

}  // namespace steadyturn
