#include "history_words.h"

#include <fmt/format.h>

#include <cmath>

#include "outlook_words.h"

namespace steadyturn {
namespace {

std::string leavingClause(const HistoryData& data) {
  const auto limit = writeRounded(data.limitPercent);
  const auto crossing = crossingOf(data);
  if (!crossing) return fmt::format("stays within ±{} % for 20 years at this rate", limit);
  if (*crossing <= data.asOf) return fmt::format("the next check could find it outside ±{} % already", limit);
  return fmt::format("could leave ±{} % around {}", limit, writeDate(*crossing));
}

bool slopeIsCertain(const DriftResult& drift) {
  const auto& interval = drift.slopeInterval;
  return drift.slopePercentPerYear && interval && (interval->low > 0 || interval->high < 0);
}

std::string fleetRate(const FleetWord& fleet) {
  return fmt::format("{} % {}", signedNumber(fleet.outlook.slope.slope, 2),
                     fleet.exposure == Exposure::Days ? "a year" : "in 5,000 tightenings");
}

std::string borrowedDrift(const HistoryData& data) {
  if (data.forecast->outlook.basis == OutlookBasis::Assumption) return "too few checks to tell a drift";
  return fmt::format("too few checks of its own; by tools alike {}, {}", fleetRate(data.forecast->fleet),
                     leavingClause(data));
}

std::string ownRate(const DriftResult& own) {
  if (!own.slopePercentPerYear) return "its own checks: too few for a slope";
  return fmt::format("its own checks alone: {} % a year, too few for an interval",
                     signedNumber(*own.slopePercentPerYear, 2));
}

std::string insideFor(const HistoryData& data) {
  const auto crossing = crossingOf(data);
  if (!crossing) return ", stays within";
  if (*crossing <= data.asOf) return ", may be outside now";
  return ", inside until " + writeDate(*crossing).substr(0, sizeof "2027-03" - 1);
}

std::string shortBorrowed(const HistoryData& data) {
  if (data.forecast->outlook.basis == OutlookBasis::Assumption) return "assumed, no record yet";
  return "by tools alike" + insideFor(data);
}

}  // namespace

std::string signedNumber(double value, int significant) {
  auto size = writeRounded(std::abs(value), significant);
  if (size == "0") return size;
  return (value < 0 ? "−" : "+") + size;
}

std::string driftSentence(const HistoryData& data) {
  if (data.points.empty()) return "never checked at this set-point";
  if (isBorrowed(data)) return borrowedDrift(data);
  switch (data.drift.state) {
    case DriftState::Unknown:
      return "too few checks to tell a drift";
    case DriftState::Steady:
      return "steady; " + leavingClause(data);
    case DriftState::Drifting:
    case DriftState::Leaving:
      break;
  }
  // Scatter alone can carry the prediction over the limit: that is no drift, and must not be told as one.
  if (!slopeIsCertain(data.drift)) return "no clear drift, but the checks scatter; " + leavingClause(data);
  return fmt::format("drifts by {} % a year; {}", signedNumber(*data.drift.slopePercentPerYear, 2),
                     leavingClause(data));
}

std::string basisSentence(const HistoryData& data) {
  if (!data.forecast || data.points.empty()) return {};
  auto sentence = borrowedSentence(data.forecast->outlook.basis, data.forecast->fleet);
  return isBorrowed(data) ? sentence + "; " + ownRate(data.drift) : sentence;
}

std::string shortDriftSentence(const HistoryData& data) {
  if (data.points.empty()) return "never checked";
  if (isBorrowed(data)) return shortBorrowed(data);
  const auto& drift = data.drift;
  if (drift.state == DriftState::Unknown) return "too few checks to tell a drift";
  std::string how = "scatters";
  if (slopeIsCertain(drift)) how = fmt::format("{} % a year", signedNumber(*drift.slopePercentPerYear, 2));
  if (drift.state == DriftState::Steady) how = "steady";
  return how + insideFor(data);
}

std::string pointNote(const PointSummary& point) {
  return fmt::format("{}, {}: {} % ± {} % (k = 2), {}", writeDate(point.date),
                     point.phase == Phase::AsFound ? "as found" : "as left", signedNumber(point.meanDeviation, 3),
                     writeRounded(2 * point.standardUncertainty, 2), writeVerdict(point.verdict));
}

}  // namespace steadyturn
