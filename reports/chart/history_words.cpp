#include "history_words.h"

#include <fmt/format.h>

#include <cmath>

namespace steadyturn {
namespace {

std::string leavingClause(const HistoryData& data) {
  const auto limit = writeRounded(data.limitPercent);
  const auto& crossing = data.drift.crossingDate;
  if (!crossing) return fmt::format("stays within ±{} % for 20 years at this rate", limit);
  if (*crossing <= data.asOf) return fmt::format("the next check could find it outside ±{} % already", limit);
  return fmt::format("could leave ±{} % around {}", limit, writeDate(*crossing));
}

bool slopeIsCertain(const DriftResult& drift) {
  const auto& interval = drift.slopeInterval;
  return drift.slopePercentPerYear && interval && (interval->low > 0 || interval->high < 0);
}

}  // namespace

std::string signedNumber(double value, int significant) {
  const auto size = writeRounded(std::abs(value), significant);
  if (size == "0") return size;
  return (value < 0 ? "−" : "+") + size;
}

std::string driftSentence(const HistoryData& data) {
  if (data.points.empty()) return "never checked at this set-point";
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

std::string shortDriftSentence(const HistoryData& data) {
  if (data.points.empty()) return "never checked";
  const auto& drift = data.drift;
  if (drift.state == DriftState::Unknown) return "too few checks to tell a drift";
  std::string how = "scatters";
  if (slopeIsCertain(drift)) how = fmt::format("{} % a year", signedNumber(*drift.slopePercentPerYear, 2));
  if (drift.state == DriftState::Steady) how = "steady";
  if (!drift.crossingDate) return how + ", stays within";
  if (*drift.crossingDate <= data.asOf) return how + ", may be outside now";
  return how + ", inside until " + writeDate(*drift.crossingDate).substr(0, sizeof "2027-03" - 1);
}

std::string pointNote(const PointSummary& point) {
  return fmt::format("{}, {}: {} % ± {} % (k = 2), {}", writeDate(point.date),
                     point.phase == Phase::AsFound ? "as found" : "as left", signedNumber(point.meanDeviation, 3),
                     writeRounded(2 * point.standardUncertainty, 2), writeVerdict(point.verdict));
}

}  // namespace steadyturn
