// How good forecasts were, once it is known what came: coverage of their intervals and mean log score (the mean
// natural logarithm of the density a forecast gave to what was found; T. Gneiting and A. E. Raftery 2007, JASA 102).
#pragma once

#include <array>
#include <cstddef>
#include <optional>

namespace steadyturn {

// Student's t about `mean`; absent degrees of freedom: normal.
struct Forecast {
  double mean = 0;
  double standardError = 0;
  std::optional<double> degreesOfFreedom;
};

double logDensity(const Forecast& forecast, double found);

inline constexpr std::array coverageLevels{0.50, 0.80, 0.95};

class ForecastScore {
 public:
  // REQUIRES: forecast.standardError > 0.
  void add(const Forecast& forecast, double found);
  void add(const ForecastScore& other);

  std::size_t forecasts() const { return forecasts_; }
  std::optional<double> coverage(std::size_t level) const;  // share of intervals that held what was found
  std::optional<double> meanLogScore() const;

 private:
  std::size_t forecasts_ = 0;
  std::array<std::size_t, coverageLevels.size()> held_{};
  double logScores_ = 0;
};

}  // namespace steadyturn
