// Least squares with one slope for all segments and an intercept for each (analysis of covariance with a common
// slope; any statistics text, e.g. Snedecor & Cochran, Statistical Methods). Plain numbers: knows no dates.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace steadyturn {

struct SegmentMean {
  std::size_t count = 0;
  double x = 0;
  double y = 0;
};

class CommonSlope {
 public:
  // Observations stand segment after segment; `sizes` says how many each holds.
  // REQUIRES: x and y finite and as long as the sum of sizes; every size > 0.
  CommonSlope(std::span<const double> x, std::span<const double> y, std::span<const std::size_t> sizes);

  const std::vector<SegmentMean>& means() const { return means_; }
  int degreesOfFreedom() const { return degreesOfFreedom_; }  // n − S − 1, may be < 1

  // Absent when no segment spans any x.
  std::optional<double> slope() const;
  // These need degrees of freedom, too.
  std::optional<double> residualStandardDeviation() const;
  std::optional<double> slopeStandardError() const;

  std::optional<double> at(double x, std::size_t segment) const;
  // Of one more observation at x: s √(1 + 1/n_S + (x − x̄_S)²/Σx̃²).
  std::optional<double> predictionStandardError(double x, std::size_t segment) const;

 private:
  bool hasSlope() const { return sumXX_ > 0; }
  bool hasScatter() const { return hasSlope() && degreesOfFreedom_ >= 1; }

  std::vector<SegmentMean> means_;
  int degreesOfFreedom_ = 0;
  double sumXX_ = 0;
  double slope_ = 0;
  double residual_ = 0;  // s
};

}  // namespace steadyturn
