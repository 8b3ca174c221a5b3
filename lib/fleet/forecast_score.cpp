#include "forecast_score.h"

#include <cmath>
#include <numbers>

#include "student_t.h"

namespace steadyturn {

double logDensity(const Forecast& forecast, double found) {
  const double z = (found - forecast.mean) / forecast.standardError;
  const double scale = std::log(forecast.standardError);
  if (!forecast.degreesOfFreedom) return -0.5 * z * z - scale - 0.5 * std::log(2 * std::numbers::pi);
  const double df = *forecast.degreesOfFreedom;
  return std::lgamma((df + 1) / 2) - std::lgamma(df / 2) - 0.5 * std::log(df * std::numbers::pi) - scale -
         (df + 1) / 2 * std::log1p(z * z / df);
}

void ForecastScore::add(const Forecast& forecast, double found) {
  ++forecasts_;
  logScores_ += logDensity(forecast, found);
  const double distance = std::abs(found - forecast.mean) / forecast.standardError;
  const double outside = 2 * studentUpper(distance, forecast.degreesOfFreedom);
  for (std::size_t i = 0; i < coverageLevels.size(); ++i) held_[i] += outside >= 1 - coverageLevels[i] ? 1 : 0;
}

void ForecastScore::add(const ForecastScore& other) {
  forecasts_ += other.forecasts_;
  logScores_ += other.logScores_;
  for (std::size_t i = 0; i < held_.size(); ++i) held_[i] += other.held_[i];
}

std::optional<double> ForecastScore::coverage(std::size_t level) const {
  if (forecasts_ == 0) return std::nullopt;
  return static_cast<double>(held_.at(level)) / static_cast<double>(forecasts_);
}

std::optional<double> ForecastScore::meanLogScore() const {
  if (forecasts_ == 0) return std::nullopt;
  return logScores_ / static_cast<double>(forecasts_);
}

}  // namespace steadyturn
