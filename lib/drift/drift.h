// A tool's drift at one set-point across its adjustments: one slope, an intercept for each segment between
// adjustments (analysis of covariance), prediction interval, the day the interval leaves the limit, due date.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "common_slope.h"
#include "date.h"

namespace steadyturn {

enum class Phase { AsFound, AsLeft };
std::string_view writePhase(Phase phase);  // "as_found", "as_left"
Result<Phase> parsePhase(std::string_view typed);

struct DatedDeviation {
  Date date;
  Phase phase = Phase::AsFound;
  double deviationPercent = 0;
};

struct Interval {
  double low = 0;
  double high = 0;
};

struct Prediction {
  double deviationPercent = 0;          // location
  std::optional<Interval> interval;     // for the mean deviation one more check would find; absent when df < 1
  std::optional<double> standardError;  // half width / t quantile; absent with the interval
};

// A segment: the checks from one adjustment (or the first check) up to the next.
struct Segment {
  std::size_t count = 0;
  Date first{};
  Date last{};
  double meanYears = 0;  // mean time, years since the fit's epoch
  double meanDeviation = 0;
};

// The fitted line. Build once, predict as often as a chart has pixels. The Student t quantile is taken once.
class DriftFit {
 public:
  // Sorts by date, as found before as left on one day. An as-left entry starts a new segment.
  // REQUIRES: checks not empty, every deviation finite, 0 < confidence < 1.
  DriftFit(std::span<const DatedDeviation> checks, double confidence);

  std::size_t count() const { return count_; }
  // n − S − 1; figures below that need it are absent when it is < 1.
  int degreesOfFreedom() const { return line_.degreesOfFreedom(); }
  const std::vector<Segment>& segments() const { return segments_; }
  std::optional<double> slopePercentPerYear() const;  // absent when no segment spans any time
  std::optional<double> slopeStandardError() const;
  std::optional<Interval> slopeInterval() const;
  std::optional<double> pValue() const;  // two-sided, slope = 0
  std::optional<double> residualStandardDeviation() const;
  // In segment `segment` (the newest when left out).
  std::optional<Prediction> predict(Date date) const;
  std::optional<Prediction> predict(Date date, std::size_t segment) const;
  // First day on or after `from` on which the newest segment's interval reaches outside ± limit; nothing
  // within `horizonDays`, or when there is no interval.
  std::optional<Date> crossing(Date from, double limitPercent, int horizonDays) const;

 private:
  std::size_t count_ = 0;
  Date epoch_{};
  std::vector<Segment> segments_;
  CommonSlope line_;
  double quantile_ = 0;  // Student t for the confidence; unused when df < 1
};

enum class DriftState { Steady, Drifting, Leaving, Unknown };
std::string_view writeState(DriftState state);  // "steady", "drifting", "leaving", "unknown"

struct DriftInput {
  double limitPercent = 0;
  double confidence = 0.95;
  Date asOf{};
  int intervalDays = 0;  // the shop's policy, > 0
  std::vector<DatedDeviation> checks;
};

struct DriftResult {
  std::optional<double> slopePercentPerYear;
  std::optional<double> slopeStandardError;
  std::optional<Interval> slopeInterval;
  std::optional<double> pValue;
  std::optional<double> residualStandardDeviation;
  int degreesOfFreedom = 0;
  std::size_t segments = 0;
  std::optional<double> predictedPercent;
  std::optional<Interval> predictionInterval;
  std::optional<double> predictionStandardError;
  std::optional<Date> crossingDate;  // within 20 years of asOf
  Date dueDate{};                    // the earlier of last check + interval and crossing
  DriftState state = DriftState::Unknown;
};

// REQUIRES nothing: problems name the field as the contract's JSON does. Sources: any statistics text (analysis
// of covariance, common slope); Student t prediction interval.
Result<DriftResult> evaluateDrift(const DriftInput& input);

}  // namespace steadyturn
