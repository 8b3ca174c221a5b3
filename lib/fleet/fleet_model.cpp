#include "fleet_model.h"

#include <algorithm>
#include <cmath>

namespace steadyturn {

namespace {

// Sums over the tools that everything below is made of, with v = σ² + τ² x̃ᵀx̃ the variance of a tool's x̃ᵀỹ / |x̃|
// and w = x̃ᵀx̃ / v its weight in the group's slope.
struct Sums {
  double w = 0, w2 = 0, w3 = 0;       // Σ w, w², w³
  double wy = 0;                      // Σ x̃ᵀỹ / v
  double sv2 = 0, sv3 = 0, s2v3 = 0;  // Σ s/v², s/v³, s²/v³
  double inverse2 = 0;                // trace of V⁻²
};

Sums sumUp(std::span<const SlopeSums> tools, const FleetVariances& variances) {
  Sums sums;
  const double scatter2 = 1 / (variances.residual * variances.residual);
  for (const SlopeSums& tool : tools) {
    sums.inverse2 += tool.contrasts() * scatter2;
    if (!tool.speaksOfSlope()) continue;
    const double s = tool.xx;
    const double v = variances.residual + variances.slope * s;
    const double w = s / v;
    sums.w += w;
    sums.w2 += w * w;
    sums.w3 += w * w * w;
    sums.wy += tool.xy / v;
    sums.sv2 += w / v;
    sums.sv3 += w / (v * v);
    sums.s2v3 += w * w / v;
    sums.inverse2 += 1 / (v * v) - scatter2;
  }
  return sums;
}

// Inverse of the expected restricted information ½ tr(P Vᵢ P Vⱼ), V₁ = x̃x̃ᵀ, V₂ = 1.
VarianceMatrix varianceOf(const Sums& sums, double groupVariance) {
  const double phi = groupVariance;
  const double slope = 0.5 * (sums.w2 - 2 * phi * sums.w3 + phi * phi * sums.w2 * sums.w2);
  const double both = 0.5 * (sums.sv2 - 2 * phi * sums.s2v3 + phi * phi * sums.w2 * sums.sv2);
  const double residual = 0.5 * (sums.inverse2 - 2 * phi * sums.sv3 + phi * phi * sums.sv2 * sums.sv2);
  const double determinant = slope * residual - both * both;
  return {.slope = residual / determinant, .both = -both / determinant, .residual = slope / determinant};
}

double quadratic(const VarianceMatrix& matrix, double bySlope, double byResidual) {
  return matrix.slope * bySlope * bySlope + 2 * matrix.both * bySlope * byResidual +
         matrix.residual * byResidual * byResidual;
}

// Σ Wᵢⱼ Mᵢⱼ of two symmetric matrices.
double contracted(const VarianceMatrix& w, const VarianceMatrix& m) {
  return w.slope * m.slope + 2 * w.both * m.both + w.residual * m.residual;
}

// Kenward and Roger's Φ (Qᵢⱼ − Pᵢ Φ Pⱼ) Φ for the one fixed slope.
VarianceMatrix groupByVariances(const Sums& sums, double phi) {
  const double phi2 = phi * phi;
  return {.slope = phi2 * (sums.w3 - sums.w2 * phi * sums.w2),
          .both = phi2 * (sums.s2v3 - sums.w2 * phi * sums.sv2),
          .residual = phi2 * (sums.sv3 - sums.sv2 * phi * sums.sv2)};
}

}  // namespace

FleetModel::FleetModel(std::span<const SlopeSums> tools, const FleetVariances& variances, double groupPrecision)
    : variances_(variances) {
  const Sums sums = sumUp(tools, variances);
  groupVariance_ = 1 / (sums.w + groupPrecision);
  groupSlope_ = sums.wy * groupVariance_;
  groupBySlope_ = groupVariance_ * groupVariance_ * sums.w2;
  groupByResidual_ = groupVariance_ * groupVariance_ * sums.sv2;
  if (groupPrecision > 0) return;  // assumed variances are not in doubt by the record
  ofVariances_ = varianceOf(sums, groupVariance_);
  ofGroupByVariances_ = groupByVariances(sums, groupVariance_);
}

std::optional<FleetModel> FleetModel::estimated(std::span<const SlopeSums> tools) {
  const auto fit = fitRestricted(tools);
  if (!fit) return std::nullopt;
  FleetModel model(tools, fit->variances, 0);
  model.logLikelihood_ = fit->logLikelihood;
  return model;
}

FleetModel FleetModel::assumed(std::span<const SlopeSums> tools, const FleetAssumption& assumption) {
  return {tools, assumption.variances, 1 / assumption.groupSlopeVariance};
}

double FleetModel::satterthwaite(double variance, double bySlope, double byResidual) const {
  return std::max(1.0, 2 * variance * variance / quadratic(ofVariances_, bySlope, byResidual));
}

SlopeFigure FleetModel::groupSlope() const {
  return {.slope = groupSlope_, .standardError = std::sqrt(groupVariance_), .degreesOfFreedom = {}};
}

SlopeFigure FleetModel::groupSlopeAdjusted() const {
  SlopeFigure figure{.slope = groupSlope_,
                     .standardError = std::sqrt(groupVariance_ + 2 * contracted(ofVariances_, ofGroupByVariances_)),
                     .degreesOfFreedom = {}};
  if (isEstimated()) figure.degreesOfFreedom = satterthwaite(groupVariance_, groupBySlope_, groupByResidual_);
  return figure;
}

// How a tool's slope mixes its own with the group's, and how that changes with the variances.
struct FleetModel::Borrowing {
  double share;  // of the group, σ²/v
  double slope;
  double variance;             // of prediction at known variances
  double bySlope, byResidual;  // its derivatives
  double estimation;  // what estimating the variances adds (R. N. Kackar and D. A. Harville 1984, JASA 79), twice
};

FleetModel::Borrowing FleetModel::borrowing(const SlopeSums& tool) const {
  const auto [between, within] = variances_;
  const double s = tool.xx;
  const double v = within + between * s;
  const double share = within / v;
  const double own = tool.speaksOfSlope() ? tool.xy / s : groupSlope_;
  const double shareBySlope = -within * s / (v * v);
  const double shareByResidual = between * s / (v * v);
  Borrowing mixed{
      .share = share,
      .slope = share * groupSlope_ + (1 - share) * own,
      .variance = between * share + share * share * groupVariance_,
      .bySlope = share * share + 2 * share * groupVariance_ * shareBySlope + share * share * groupBySlope_,
      .byResidual = between * between * s / (v * v) + 2 * share * groupVariance_ * shareByResidual +
                    share * share * groupByResidual_,
      .estimation = 2 * share * share * contracted(ofVariances_, ofGroupByVariances_)};
  if (!tool.speaksOfSlope()) return mixed;
  // The share's own change moves the prediction by (own − group's slope); that difference varies by v/s − Φ and goes
  // along with the changes of the group's slope.
  const double spread = v / s - groupVariance_;
  const double alongSlope = groupBySlope_ - groupVariance_ * s / v;
  const double alongResidual = groupByResidual_ - groupVariance_ / v;
  const VarianceMatrix moved{
      .slope = shareBySlope * shareBySlope * spread - 2 * share * shareBySlope * alongSlope,
      .both = shareBySlope * shareByResidual * spread -
              share * (shareBySlope * alongResidual + shareByResidual * alongSlope),
      .residual = shareByResidual * shareByResidual * spread - 2 * share * shareByResidual * alongResidual};
  mixed.estimation += 2 * contracted(ofVariances_, moved);
  return mixed;
}

ToolSlope FleetModel::slopeOf(const SlopeSums& tool) const {
  const Borrowing mixed = borrowing(tool);
  return {
      .slope = mixed.slope, .standardError = std::sqrt(mixed.variance + mixed.estimation), .borrowed = mixed.share};
}

FleetPrediction FleetModel::predict(const SlopeSums& tool, double x) const {
  const Borrowing mixed = borrowing(tool);
  const double dx = x - tool.newest.x;
  const double level = 1 + 1 / static_cast<double>(tool.newest.count);
  const double variance = variances_.residual * level + dx * dx * mixed.variance;
  FleetPrediction prediction{.mean = tool.newest.y + mixed.slope * dx,
                             .standardError = std::sqrt(variance + dx * dx * mixed.estimation),
                             .degreesOfFreedom = {}};
  if (isEstimated()) {
    prediction.degreesOfFreedom =
        satterthwaite(variance, dx * dx * mixed.bySlope, level + dx * dx * mixed.byResidual);
  }
  return prediction;
}

}  // namespace steadyturn
