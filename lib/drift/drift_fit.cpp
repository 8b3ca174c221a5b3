#include <algorithm>
#include <cmath>
#include <tuple>

#include "drift.h"
#include "first_day_outside.h"
#include "student_t.h"

namespace steadyturn {

namespace {

double yearsSince(Date epoch, Date date) { return static_cast<double>((date - epoch).count()) / daysPerYear; }

bool earlier(const DatedDeviation& a, const DatedDeviation& b) {
  return std::tie(a.date, a.phase) < std::tie(b.date, b.phase);
}

// Histories come sorted from the store, so a copy is made only for the one that is not.
std::span<const DatedDeviation> sorted(std::span<const DatedDeviation> checks, std::vector<DatedDeviation>& copy) {
  if (std::is_sorted(checks.begin(), checks.end(), earlier)) return checks;
  copy.assign(checks.begin(), checks.end());
  std::stable_sort(copy.begin(), copy.end(), earlier);
  return copy;
}

std::vector<Segment> segmentsOf(std::span<const DatedDeviation> checks) {
  std::vector<Segment> segments;
  for (const DatedDeviation& check : checks) {
    if (segments.empty() || check.phase == Phase::AsLeft) segments.push_back({.count = 0, .first = check.date});
    ++segments.back().count;
    segments.back().last = check.date;
  }
  return segments;
}

CommonSlope fit(std::span<const DatedDeviation> checks, const std::vector<Segment>& segments) {
  std::vector<double> numbers(2 * checks.size());
  const std::span<double> x(numbers.data(), checks.size());
  const std::span<double> y(numbers.data() + checks.size(), checks.size());
  for (std::size_t i = 0; i < checks.size(); ++i) {
    x[i] = yearsSince(checks.front().date, checks[i].date);
    y[i] = checks[i].deviationPercent;
  }
  std::vector<std::size_t> sizes(segments.size());
  std::transform(segments.begin(), segments.end(), sizes.begin(), [](const Segment& s) { return s.count; });
  return CommonSlope(x, y, sizes);
}

}  // namespace

DriftFit::DriftFit(std::span<const DatedDeviation> checks, double confidence)
    : count_(checks.size()), line_({}, {}, {}) {
  std::vector<DatedDeviation> copy;
  checks = sorted(checks, copy);
  epoch_ = checks.front().date;
  segments_ = segmentsOf(checks);
  line_ = fit(checks, segments_);
  for (std::size_t i = 0; i < segments_.size(); ++i) {
    segments_[i].meanYears = line_.means()[i].x;
    segments_[i].meanDeviation = line_.means()[i].y;
  }
  if (line_.residualStandardDeviation()) quantile_ = studentQuantile(confidence, line_.degreesOfFreedom());
}

std::optional<double> DriftFit::slopePercentPerYear() const { return line_.slope(); }

std::optional<double> DriftFit::slopeStandardError() const { return line_.slopeStandardError(); }

std::optional<Interval> DriftFit::slopeInterval() const {
  const auto error = line_.slopeStandardError();
  if (!error) return std::nullopt;
  const double reach = quantile_ * *error;
  return Interval{.low = *line_.slope() - reach, .high = *line_.slope() + reach};
}

std::optional<double> DriftFit::pValue() const {
  const auto error = line_.slopeStandardError();
  if (!error) return std::nullopt;
  const double slope = std::abs(*line_.slope());
  if (*error == 0) return slope == 0 ? 1.0 : 0.0;
  return 2 * studentUpper(slope / *error, line_.degreesOfFreedom());
}

std::optional<double> DriftFit::residualStandardDeviation() const { return line_.residualStandardDeviation(); }

std::optional<Prediction> DriftFit::predict(Date date) const { return predict(date, segments_.size() - 1); }

std::optional<Prediction> DriftFit::predict(Date date, std::size_t segment) const {
  const double x = yearsSince(epoch_, date);
  const auto location = line_.at(x, segment);
  if (!location) return std::nullopt;
  Prediction prediction{
      .deviationPercent = *location, .interval = {}, .standardError = line_.predictionStandardError(x, segment)};
  if (prediction.standardError) {
    const double reach = quantile_ * *prediction.standardError;
    prediction.interval = Interval{.low = *location - reach, .high = *location + reach};
  }
  return prediction;
}

std::optional<Date> DriftFit::crossing(Date from, double limitPercent, int horizonDays) const {
  if (!line_.residualStandardDeviation()) return std::nullopt;
  // The interval's upper edge is convex in time and its lower edge concave: the days inside are one unbroken stretch.
  return firstDayOutside(from, limitPercent, horizonDays, [this](Date day) { return *predict(day)->interval; });
}

}  // namespace steadyturn
