#include "observed_reliability.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "clopper_pearson.h"

namespace steadyturn {

namespace {

// Of one tool: each day with a check as found, and whether all its set-points were inside.
std::map<Date, bool> visitsOf(const std::vector<PastChecks>& setPoints) {
  std::map<Date, bool> visits;
  for (const PastChecks& one : setPoints) {
    for (const DatedDeviation& check : one.checks) {
      if (check.phase != Phase::AsFound) continue;
      const bool inside = std::abs(check.deviationPercent) <= one.permittedPercent;
      const auto [visit, first] = visits.emplace(check.date, inside);
      if (!first) visit->second = visit->second && inside;
    }
  }
  return visits;
}

}  // namespace

ObservedReliability observedReliability(std::span<const std::vector<PastChecks>> tools, double from, double to,
                                        double confidence) {
  ObservedReliability observed;
  double days = 0;
  for (const auto& setPoints : tools) {
    std::optional<Date> before;
    for (const auto& [date, inside] : visitsOf(setPoints)) {
      const double since = before ? static_cast<double>((date - *before).count()) : 0;
      if (before && since >= from && since <= to) {
        ++observed.checks;
        observed.inside += inside ? 1 : 0;
        days += since;
      }
      before = date;
    }
  }
  if (observed.checks == 0) return observed;
  observed.meanDays = days / static_cast<double>(observed.checks);
  observed.share = static_cast<double>(observed.inside) / static_cast<double>(observed.checks);
  observed.bounds = clopperPearson(observed.inside, observed.checks, confidence);
  return observed;
}

}  // namespace steadyturn
