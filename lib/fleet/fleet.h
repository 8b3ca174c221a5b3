// The one place that says what a tool of a group will probably show: the group's model, estimated from the shop's
// record or, where that is too short, assumed; by days or by tightenings, whichever predicts better.
#pragma once

#include <span>
#include <vector>

#include "fleet_member.h"
#include "fleet_model.h"

namespace steadyturn {

// A group counts as on record when this many tools speak of a drift and as many differences are left beside the
// tools' own slopes (common practice: with fewer, one tool decides the variances).
inline constexpr int fewestTools = 5;
inline constexpr int fewestSpareDifferences = 5;

// Mean log score of every tool's newest check, predicted from all the group's checks but the tools' newest.
struct ExposureScores {
  std::optional<double> days, tightenings;  // absent: too little to try it on, or nobody counted
  std::size_t checks = 0;                   // that were predicted
};

struct FleetOutlook {
  FleetPrediction prediction;  // of one more check on the day
  Interval interval;           // at the confidence
  ToolSlope slope;             // % per year, or per 5,000 tightenings
};

class Fleet {
 public:
  // The members are copied. REQUIRES: none is empty; 0 < confidence < 1; permittedPercent > 0 (the widest of the
  // group's: only what is assumed goes by it).
  Fleet(std::span<const FleetMember> members, double permittedPercent, double confidence,
        std::optional<Exposure> exposure = {});  // absent: whichever predicts better

  bool isEstimated() const { return model_.isEstimated(); }
  double permittedPercent() const { return permittedPercent_; }  // what an assumption goes by
  Exposure exposure() const { return exposure_; }
  const ExposureScores& exposureScores() const { return scores_; }
  const FleetModel& model() const { return model_; }
  std::size_t size() const { return members_.size(); }
  std::size_t toolsThatSpeak() const;
  std::size_t checks() const;
  const FleetMember& member(std::size_t index) const { return members_[index]; }

  // REQUIRES: day on or after the member's last check.
  FleetOutlook outlook(std::size_t member, Date day) const;
  ToolSlope slopeOf(std::size_t member) const;
  // First day on or after `from` on which the interval reaches outside ± limit; nothing within `horizonDays`.
  std::optional<Date> crossing(std::size_t member, Date from, double limitPercent, int horizonDays) const;
  // Of a tool of the group whose first check found `found`: what a check before it would have found, this much
  // exposure (years, or intervals of 5,000 tightenings) earlier. REQUIRES: exposure not negative.
  FleetPrediction backFrom(double found, double exposure) const;
  // That one more check on the day finds the mean deviation within ± limit.
  double probabilityWithin(std::size_t member, Date day, double limitPercent) const;

 private:
  FleetPrediction predict(std::size_t member, Date day) const;
  Interval intervalOf(const FleetPrediction& prediction) const;

  std::vector<FleetMember> members_;
  double permittedPercent_;
  double confidence_;
  ExposureScores scores_;
  Exposure exposure_;
  FleetModel model_;
};

// The group's model from sums: estimated, or assumed where the record is too short.
FleetModel modelOf(std::span<const SlopeSums> sums, double permittedPercent);

}  // namespace steadyturn
