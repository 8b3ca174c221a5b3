// The graduation that most probably lands in the window without endangering the part.
#pragma once

#include "delivery.h"

namespace steadyturn {

// A part's limit may be passed with at most this probability (the project's default; a shop may set its own).
inline constexpr double defaultPartLimitRisk = 0.001;

struct SettingRange {
  std::optional<StatedTorque> low{};
  std::optional<StatedTorque> high{};
};

struct BestSetting {
  StatedTorque setting;  // a whole number of graduations, in the resolution's unit
  DeliveryResult result;
};

// Searches the graduations of `resolution` (> 0) inside `range` for the largest probability of landing in the window
// while P(over part limit) ≤ risk. `at` gives the input for a setting, so that a deviation that changes along
// the range is honoured. Ties (probabilities that a double can't tell apart) go to the smallest probability outside,
// then to the setting expected nearest to the window's middle. Nothing if no graduation keeps the risk.
// REQUIRES: at(s) has no problems for every setting > 0, save that its deviation may be −100 % or less (such a
// setting lands nowhere); the same window and part limit for every setting.
std::optional<BestSetting> findBestSetting(const std::function<DeliveryInput(StatedTorque)>& at,
                                           StatedTorque resolution, const SettingRange& range,
                                           double risk = defaultPartLimitRisk);

// The same for one input whose deviation is the same everywhere (the contract's `evaluate delivery`);
// nothing without a resolution.
std::optional<BestSetting> findBestSetting(const DeliveryInput& input, double risk = defaultPartLimitRisk);

}  // namespace steadyturn
