#include "common_slope.h"

#include <cmath>
#include <numeric>

namespace steadyturn {

namespace {

// Averages distances from the first value: equal values then have exactly their own value as mean, and a flat
// series exactly no residual.
double meanOf(std::span<const double> values) {
  const double first = values.front();
  const double sum = std::accumulate(values.begin(), values.end(), 0.0,
                                     [first](double total, double value) { return total + (value - first); });
  return first + sum / static_cast<double>(values.size());
}

}  // namespace

CommonSlope::CommonSlope(std::span<const double> x, std::span<const double> y, std::span<const std::size_t> sizes) {
  degreesOfFreedom_ = static_cast<int>(x.size()) - static_cast<int>(sizes.size()) - 1;
  means_.reserve(sizes.size());
  double sumXY = 0;
  std::size_t begin = 0;
  for (const std::size_t size : sizes) {
    const SegmentMean mean{.count = size, .x = meanOf(x.subspan(begin, size)), .y = meanOf(y.subspan(begin, size))};
    for (std::size_t i = begin; i < begin + size; ++i) {
      const double dx = x[i] - mean.x;
      sumXX_ += dx * dx;
      sumXY += dx * (y[i] - mean.y);
    }
    means_.push_back(mean);
    begin += size;
  }
  if (!hasSlope()) return;
  slope_ = sumXY / sumXX_;
  if (!hasScatter()) return;

  double sumOfSquares = 0;
  begin = 0;
  for (const SegmentMean& mean : means_) {
    for (std::size_t i = begin; i < begin + mean.count; ++i) {
      const double residual = (y[i] - mean.y) - slope_ * (x[i] - mean.x);
      sumOfSquares += residual * residual;
    }
    begin += mean.count;
  }
  residual_ = std::sqrt(sumOfSquares / degreesOfFreedom_);
}

std::optional<double> CommonSlope::slope() const { return hasSlope() ? std::optional(slope_) : std::nullopt; }

std::optional<double> CommonSlope::residualStandardDeviation() const {
  return hasScatter() ? std::optional(residual_) : std::nullopt;
}

std::optional<double> CommonSlope::slopeStandardError() const {
  return hasScatter() ? std::optional(residual_ / std::sqrt(sumXX_)) : std::nullopt;
}

std::optional<double> CommonSlope::at(double x, std::size_t segment) const {
  if (!hasSlope()) return std::nullopt;
  return means_[segment].y + slope_ * (x - means_[segment].x);
}

std::optional<double> CommonSlope::predictionStandardError(double x, std::size_t segment) const {
  if (!hasScatter()) return std::nullopt;
  const double dx = x - means_[segment].x;
  return residual_ * std::sqrt(1 + 1 / static_cast<double>(means_[segment].count) + dx * dx / sumXX_);
}

}  // namespace steadyturn
