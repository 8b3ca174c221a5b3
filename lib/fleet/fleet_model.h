// Drift of a group of tools that are built and treated alike: a linear mixed model of the mean deviation.
//
//   deviation = level of the segment + (group's slope + the tool's own difference) · exposure + scatter of a check
//
// The group's slope and every segment's level (between two adjustments) are fixed, the tools' differences are random
// with variance `slope`, checks scatter with variance `residual`. Levels are fixed, not drawn from the group: an
// adjuster sets them, so one tool's level tells nothing of another's, and a single check gives its segment's level.
// Exposure is whatever wears a tool: years, or thousands of tightenings.
//
// Variances: restricted maximum likelihood. Predictions: best linear unbiased (C. R. Henderson 1975, Biometrics 31).
// Their standard errors count the estimation of the group's slope and of both variances, and the degrees of freedom
// of Student's t follow Satterthwaite (M. G. Kenward and J. H. Roger 1997, Biometrics 53; for a single slope their
// degrees of freedom are Satterthwaite's). Cost: linear in the number of tools.
#pragma once

#include <optional>
#include <span>

#include "restricted_likelihood.h"
#include "slope_sums.h"

namespace steadyturn {

// What is assumed of a group with too short a record: the group's slope is about 0 with this variance, and the two
// variances are these.
struct FleetAssumption {
  double groupSlopeVariance = 0;
  FleetVariances variances;
};

struct SlopeFigure {
  double slope = 0;
  double standardError = 0;
  std::optional<double> degreesOfFreedom;  // absent: as good as infinite
};

struct ToolSlope {
  double slope = 0;          // best linear unbiased prediction
  double standardError = 0;  // of prediction; counts the variances' estimation
  double borrowed = 0;       // 0: all the tool's own, 1: all the group's
};

struct FleetPrediction {
  double mean = 0;
  double standardError = 0;  // of the next check: slope, level and scatter
  std::optional<double> degreesOfFreedom;
};

// Symmetric 2 × 2, in the order slope, residual.
struct VarianceMatrix {
  double slope = 0, both = 0, residual = 0;
};

class FleetModel {
 public:
  // Absent where the record can't tell both variances (see fitRestricted).
  static std::optional<FleetModel> estimated(std::span<const SlopeSums> tools);
  // Taken as stated; the tools' own records still move the group's slope and their own.
  static FleetModel assumed(std::span<const SlopeSums> tools, const FleetAssumption& assumption);

  bool isEstimated() const { return logLikelihood_.has_value(); }
  const FleetVariances& variances() const { return variances_; }
  // Of the two estimates, by the expected restricted information; zeros when assumed.
  const VarianceMatrix& varianceOfVariances() const { return ofVariances_; }
  std::optional<double> logLikelihood() const { return logLikelihood_; }

  // Generalised least squares at the variances; its standard error takes them as known.
  SlopeFigure groupSlope() const;
  // The same with Kenward and Roger's standard error and degrees of freedom.
  SlopeFigure groupSlopeAdjusted() const;

  // Of a tool of the group: one whose sums were among the model's.
  ToolSlope slopeOf(const SlopeSums& tool) const;
  // One more check of it at exposure x, in its newest segment. REQUIRES: tool.newest.count > 0.
  FleetPrediction predict(const SlopeSums& tool, double x) const;

 private:
  FleetModel(std::span<const SlopeSums> tools, const FleetVariances& variances, double groupPrecision);

  struct Borrowing;
  Borrowing borrowing(const SlopeSums& tool) const;
  double satterthwaite(double variance, double bySlope, double byResidual) const;

  FleetVariances variances_;
  double groupSlope_ = 0;
  double groupVariance_ = 0;  // Φ, of the group's slope
  double groupBySlope_ = 0;   // its derivatives by the variances
  double groupByResidual_ = 0;
  VarianceMatrix ofVariances_;
  VarianceMatrix ofGroupByVariances_;  // covariance of the derivatives of the estimated group's slope
  std::optional<double> logLikelihood_;
};

}  // namespace steadyturn
