// The settings a person can dial: whole graduations inside a tool's range.
#pragma once

#include <cstdint>
#include <functional>

#include "best_setting.h"

namespace steadyturn {

class Graduations {
 public:
  // REQUIRES: resolution > 0.
  Graduations(StatedTorque resolution, const SettingRange& range);

  std::int64_t first() const { return first_; }
  std::int64_t last() const { return last_; }
  bool empty() const { return last_ < first_; }

  // k graduations as the clean decimal on the dial: 17.9, not 17.900000000000002.
  StatedTorque at(std::int64_t k) const;

  // The first k in [first, last] for which `reached` holds, which must stay true from there on; last + 1 if none.
  std::int64_t firstWhere(const std::function<bool(StatedTorque)>& reached) const;

 private:
  StatedTorque resolution_;
  std::int64_t first_ = 1;
  std::int64_t last_ = 0;
};

// A torque without the noise that binary arithmetic leaves after its twelfth digit.
StatedTorque cleanDecimal(StatedTorque torque);

}  // namespace steadyturn
