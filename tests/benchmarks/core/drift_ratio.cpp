// Time of a whole drift evaluation (fit, intervals, prediction, crossing, due date) beside GSL's straight line, its
// estimate at one point and one Student t quantile, on the same figures, in turns in one run.
#include <fmt/format.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_fit.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <random>
#include <vector>

#include "drift.h"

namespace {

using namespace steadyturn;

constexpr std::size_t seriesCount = 10'000;
constexpr std::size_t checksPerSeries = 200;
constexpr int turns = 7;

struct Arrays {
  std::vector<double> x, y;
};

// Monthly checks with a drift and scatter of its own for each series; always the same.
std::vector<DriftInput> makeSeries() {
  std::mt19937_64 random(1);
  std::normal_distribution<double> scatter(0, 0.3);
  std::uniform_real_distribution<double> drift(-0.3, 0.3);
  const Date first = std::chrono::year(2010) / 1 / 4;
  std::vector<DriftInput> all(seriesCount);
  for (DriftInput& input : all) {
    input = {.limitPercent = 4, .confidence = 0.95, .asOf = first, .intervalDays = 365, .checks = {}};
    const double perYear = drift(random);
    for (std::size_t i = 0; i < checksPerSeries; ++i) {
      const Date date = first + std::chrono::days(30 * i);
      const double deviation = perYear * static_cast<double>(30 * i) / daysPerYear + scatter(random);
      input.checks.push_back({.date = date, .phase = Phase::AsFound, .deviationPercent = deviation});
    }
    input.asOf = input.checks.back().date + std::chrono::days(200);
  }
  return all;
}

std::vector<Arrays> arraysOf(const std::vector<DriftInput>& all) {
  std::vector<Arrays> arrays(all.size());
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (const DatedDeviation& check : all[i].checks) {
      const auto days = (check.date - all[i].checks.front().date).count();
      arrays[i].x.push_back(static_cast<double>(days) / daysPerYear);
      arrays[i].y.push_back(check.deviationPercent);
    }
  }
  return arrays;
}

double evaluateAll(const std::vector<DriftInput>& all) {
  double sum = 0;
  for (const DriftInput& input : all) sum += evaluateDrift(input)->predictionInterval->high;
  return sum;
}

double gslAll(const std::vector<Arrays>& all) {
  double sum = 0;
  for (const auto& [x, y] : all) {
    double c0 = 0, c1 = 0, cov00 = 0, cov01 = 0, cov11 = 0, squares = 0, value = 0, error = 0;
    gsl_fit_linear(x.data(), 1, y.data(), 1, x.size(), &c0, &c1, &cov00, &cov01, &cov11, &squares);
    gsl_fit_linear_est(x.back() + 200 / daysPerYear, c0, c1, cov00, cov01, cov11, &value, &error);
    const double variance = squares / static_cast<double>(x.size() - 2);
    const double quantile = gsl_cdf_tdist_Pinv(0.975, static_cast<double>(x.size() - 2));
    sum += value + quantile * std::sqrt(variance + error * error);
  }
  return sum;
}

template <typename Work>
double milliseconds(Work&& work, double& result) {
  const auto start = std::chrono::steady_clock::now();
  result = work();
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

}  // namespace

int main() {
  const auto series = makeSeries();
  const auto arrays = arraysOf(series);
  struct Turn {
    double ours, gsl;
    double ratio() const { return ours / gsl; }
  };
  std::array<Turn, turns> taken{};
  double ours = 0;
  double gsl = 0;
  for (Turn& turn : taken) {
    turn.ours = milliseconds([&] { return evaluateAll(series); }, ours);
    turn.gsl = milliseconds([&] { return gslAll(arrays); }, gsl);
  }
  std::ranges::sort(taken, {}, &Turn::ratio);
  const Turn& median = taken[turns / 2];
  fmt::print("drift: {:.2f} x gsl (10,000 series x 200 checks)\n", median.ratio());
  fmt::print("  {:.1f} ms against {:.1f} ms, median of {} turns; both sums of upper bounds: {:.6f} and {:.6f}\n",
             median.ours, median.gsl, turns, ours, gsl);
  return std::abs(ours - gsl) < 1e-6 * std::abs(gsl) ? 0 : 1;
}
