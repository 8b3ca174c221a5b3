#include "forecast_path.h"

#include <algorithm>

namespace steadyturn {

namespace {

std::vector<Date> daysOf(Date from, Date asOf, Date until, int pieces) {
  std::vector<Date> days;
  const auto whole = (until - from).count();
  for (int i = 0; i <= pieces; ++i) days.push_back(from + std::chrono::days{whole * i / pieces});
  if (asOf <= until) days.push_back(asOf);
  std::ranges::sort(days);
  const auto doubles = std::ranges::unique(days);
  days.erase(doubles.begin(), doubles.end());
  return days;
}

}  // namespace

std::vector<ForecastStep> forecastPath(const Fleet& fleet, std::size_t member, OutlookBasis basis,
                                       const DatedDeviation& newest, const OutlookRules& rules, Date until,
                                       int pieces) {
  std::vector<ForecastStep> path;
  if (basis == OutlookBasis::OwnRecord || until < newest.date) return path;
  for (const Date day : daysOf(newest.date, rules.asOf, until, pieces)) {
    const FleetOutlook word = fleet.outlook(member, day);
    if (basis == OutlookBasis::Fleet) {
      path.push_back({.date = day, .deviationPercent = word.prediction.mean, .interval = word.interval});
    } else {
      path.push_back({.date = day,
                      .deviationPercent = newest.deviationPercent,
                      .interval = assumedInterval(word.prediction, newest, rules)});
    }
  }
  return path;
}

}  // namespace steadyturn
