#include "fleet_member.h"

#include <algorithm>

#include "fleet_assumption.h"

namespace steadyturn {

namespace {

double yearsFrom(Date first, Date day) { return static_cast<double>((day - first).count()) / daysPerYear; }

void take(SlopeSums& sums, std::optional<HeldOut>& heldOut, bool newSegment, double x, double y) {
  if (newSegment) return sums.addFirstOfSegment(x, y);
  heldOut = HeldOut{.before = sums, .x = x, .y = y};
  sums.add(x, y);
}

}  // namespace

std::string_view writeExposure(Exposure exposure) { return exposure == Exposure::Days ? "days" : "tightenings"; }

void FleetMember::add(const DatedDeviation& check, std::optional<double> tightenings) {
  const bool newSegment = empty() || check.phase == Phase::AsLeft;
  if (empty()) {
    first_ = check.date;
    firstCount_ = tightenings.value_or(0);
  }
  last_ = check.date;
  lastDeviation_ = check.deviationPercent;
  take(byDays_, heldOutByDays_, newSegment, yearsFrom(first_, last_), lastDeviation_);
  counted_ = counted_ && tightenings.has_value();
  if (!counted_) return;
  countUpTo(last_, *tightenings);
  take(byTightenings_, heldOutByTightenings_, newSegment, count_ / tighteningsPerInterval, lastDeviation_);
}

void FleetMember::countUpTo(Date day, double tightenings) {
  countedTo_ = day;
  count_ = tightenings;
}

double FleetMember::at(Exposure exposure, Date day) const {
  if (exposure == Exposure::Days) return yearsFrom(first_, day);
  const auto days = static_cast<double>((countedTo_ - first_).count());
  const double perDay = days > 0 ? (count_ - firstCount_) / days : 0;
  return (count_ + perDay * static_cast<double>((day - countedTo_).count())) / tighteningsPerInterval;
}

}  // namespace steadyturn
