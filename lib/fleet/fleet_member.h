// One tool at one set-point as the fleet sees it, check by check: by days and by the number of tightenings.
#pragma once

#include <optional>

#include "drift.h"
#include "slope_sums.h"

namespace steadyturn {

enum class Exposure { Days, Tightenings };
std::string_view writeExposure(Exposure exposure);  // "days", "tightenings"

// The newest check as found, with what was known before it: for trying a model on figures it has not seen.
struct HeldOut {
  SlopeSums before;
  double x = 0, y = 0;
};

class FleetMember {
 public:
  // Checks come in order of time, as found before as left on one day. `tightenings`: how many the tool has done up
  // to that check; absent when nobody counted.
  void add(const DatedDeviation& check, std::optional<double> tightenings = {});
  // How many it has done up to a later day; days to come are taken to go on as fast as from the first check to then.
  void countUpTo(Date day, double tightenings);

  bool empty() const { return byDays_.count == 0; }
  Date last() const { return last_; }
  double lastDeviation() const { return lastDeviation_; }
  const SlopeSums& sums(Exposure exposure) const { return exposure == Exposure::Days ? byDays_ : byTightenings_; }
  const std::optional<HeldOut>& heldOut(Exposure exposure) const {
    return exposure == Exposure::Days ? heldOutByDays_ : heldOutByTightenings_;
  }
  // Every check came with a count.
  bool counted() const { return counted_; }
  // In years since the first check, or in intervals of 5,000 tightenings. REQUIRES: not empty; day on or after the
  // last check; counted() for tightenings.
  double at(Exposure exposure, Date day) const;

 private:
  SlopeSums byDays_, byTightenings_;
  std::optional<HeldOut> heldOutByDays_, heldOutByTightenings_;
  Date first_{}, last_{}, countedTo_{};
  double lastDeviation_ = 0;
  double firstCount_ = 0, count_ = 0;
  bool counted_ = true;
};

}  // namespace steadyturn
