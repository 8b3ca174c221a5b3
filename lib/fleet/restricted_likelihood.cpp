#include "restricted_likelihood.h"

#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <vector>

namespace steadyturn {

namespace {

constexpr std::size_t fewestSpeaking = 3;

// With V = σ²(I + λ x̃x̃ᵀ) for each tool, λ = variance of slopes / variance of checks, Woodbury's identity turns every
// quadratic form and determinant into sums over tools of x̃ᵀx̃, x̃ᵀỹ and ỹᵀỹ.
class Profile {
 public:
  explicit Profile(std::span<const SlopeSums> tools) {
    for (const SlopeSums& tool : tools) {
      contrasts_ += tool.contrasts();
      logSizes_ += tool.logSizes;
      if (!tool.speaksOfSlope()) {
        flatSquares_ += tool.yy;
        continue;
      }
      speaking_.push_back(&tool);
      meanXX_ += tool.xx;
    }
    if (!speaking_.empty()) meanXX_ /= static_cast<double>(speaking_.size());
  }

  std::size_t speaking() const { return speaking_.size(); }
  double meanXX() const { return meanXX_; }
  int degreesOfFreedom() const { return contrasts_ - 1; }
  int beyondOwnSlopes() const { return contrasts_ - static_cast<int>(speaking_.size()); }

  struct Value {
    double criterion;   // −2 log likelihood but for constants
    double derivative;  // by λ
    double residual;    // σ² that belongs to λ
  };

  Value at(double ratio) const {
    double a = 0, aSlope = 0, c = 0, cSlope = 0, squares = flatSquares_, squaresSlope = 0, logs = 0;
    for (const SlopeSums* tool : speaking_) {
      const double d = 1 + ratio * tool->xx;
      const double share = tool->xx / d;
      const double product = tool->xy / d;
      a += share;
      aSlope -= share * share;
      c += product;
      cSlope -= share * product;
      squares += tool->yy - ratio * tool->xy * product;
      squaresSlope -= product * product;
      logs += std::log(d);
    }
    const double q = squares - c * c / a;
    const double qSlope = squaresSlope - (2 * c * cSlope * a - c * c * aSlope) / (a * a);
    const double freedom = degreesOfFreedom();
    return {.criterion = freedom * std::log(q / freedom) + logs + std::log(a),
            .derivative = freedom * qSlope / q + a + aSlope / a,
            .residual = q / freedom};
  }

  double logLikelihood(double ratio) const {
    return -0.5 * (at(ratio).criterion + degreesOfFreedom() * (1 + std::log(2 * std::numbers::pi)) + logSizes_);
  }

 private:
  std::vector<const SlopeSums*> speaking_;
  int contrasts_ = 0;
  double flatSquares_ = 0, logSizes_ = 0, meanXX_ = 0;
};

// The criterion can have more than one valley, so a grid finds the deepest and the derivative's root its floor.
double bestRatio(const Profile& profile) {
  constexpr int decadesBelow = 6;
  constexpr int decadesAbove = 8;
  constexpr int stepsPerDecade = 2;
  std::vector<double> grid{0};
  for (int i = -decadesBelow * stepsPerDecade; i <= decadesAbove * stepsPerDecade; ++i) {
    grid.push_back(std::pow(10.0, static_cast<double>(i) / stepsPerDecade) / profile.meanXX());
  }
  std::size_t lowest = 0;
  double depth = profile.at(grid[0]).criterion;
  for (std::size_t i = 1; i < grid.size(); ++i) {
    const double criterion = profile.at(grid[i]).criterion;
    if (criterion < depth) {
      depth = criterion;
      lowest = i;
    }
  }
  const double low = grid[lowest == 0 ? 0 : lowest - 1];
  const double high = grid[std::min(lowest + 1, grid.size() - 1)];
  const auto derivative = [&](double ratio) { return profile.at(ratio).derivative; };
  const double atLow = derivative(low);
  const double atHigh = derivative(high);
  if (!(atLow < 0)) return low;  // only at 0: tools do not differ more than their checks' scatter explains
  if (!(atHigh > 0)) return high;
  std::uintmax_t steps = 100;
  const auto [from, to] = boost::math::tools::toms748_solve(derivative, low, high, atLow, atHigh,
                                                            boost::math::tools::eps_tolerance<double>(48), steps);
  return from + (to - from) / 2;
}

}  // namespace

std::optional<RestrictedFit> fitRestricted(std::span<const SlopeSums> tools) {
  const Profile profile(tools);
  if (profile.speaking() < fewestSpeaking || profile.beyondOwnSlopes() < 1) return std::nullopt;
  if (!(profile.at(0).residual > 0)) return std::nullopt;
  const double ratio = bestRatio(profile);
  const double residual = profile.at(ratio).residual;
  if (!(residual > 0)) return std::nullopt;
  return RestrictedFit{.variances = {.slope = ratio * residual, .residual = residual},
                       .logLikelihood = profile.logLikelihood(ratio)};
}

}  // namespace steadyturn
