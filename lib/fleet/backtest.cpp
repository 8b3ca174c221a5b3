#include "backtest.h"

#include <algorithm>
#include <cmath>

#include "fleet.h"

namespace steadyturn {

namespace {

struct Event {
  Date date;
  std::size_t tool;
  std::size_t check;
};

std::vector<Event> inOrderOfTime(std::span<const PastChecks> group) {
  std::vector<Event> events;
  for (std::size_t tool = 0; tool < group.size(); ++tool) {
    for (std::size_t i = 0; i < group[tool].checks.size(); ++i) {
      events.push_back({.date = group[tool].checks[i].date, .tool = tool, .check = i});
    }
  }
  std::ranges::stable_sort(events, {}, &Event::date);
  return events;
}

double exposureOf(const PastChecks& tool, std::size_t check, Exposure exposure) {
  if (exposure == Exposure::Tightenings) return tool.tightenings[check];
  return static_cast<double>((tool.checks[check].date - tool.checks.front().date).count()) / daysPerYear;
}

std::optional<Forecast> ownForecast(const SlopeSums& sums, double x) {
  const int freedom = sums.contrasts() - 1;
  if (!sums.speaksOfSlope() || freedom < 1) return std::nullopt;
  const double slope = sums.xy / sums.xx;
  const double variance = std::max(0.0, sums.yy - slope * sums.xy) / freedom;
  if (!(variance > 0)) return std::nullopt;
  const double dx = x - sums.newest.x;
  const double level = 1 + 1 / static_cast<double>(sums.newest.count);
  return Forecast{.mean = sums.newest.y + slope * dx,
                  .standardError = std::sqrt(variance * (level + dx * dx / sums.xx)),
                  .degreesOfFreedom = freedom};
}

class Replay {
 public:
  Replay(std::span<const PastChecks> group, Exposure exposure)
      : group_(group), exposure_(exposure), sums_(group.size()), last_(group.size()) {
    for (const PastChecks& tool : group) widest_ = std::max(widest_, tool.permittedPercent);
  }

  void takeModel() { model_.emplace(modelOf(known(), widest_)); }

  void predict(const Event& event, BacktestScores& scores) const {
    const auto& check = group_[event.tool].checks[event.check];
    const SlopeSums& before = sums_[event.tool];
    const double x = exposureOf(group_[event.tool], event.check, exposure_);
    const auto next = model_->predict(before, x);
    const Forecast forecast{next.mean, next.standardError, next.degreesOfFreedom};
    scores.fleet.add(forecast, check.deviationPercent);
    scores.assumed += model_->isEstimated() ? 0 : 1;
    scores.lastValue.add({last_[event.tool], group_[event.tool].permittedPercent / 2, {}}, check.deviationPercent);
    const auto own = ownForecast(before, x);
    if (!own) return;
    scores.ownRegression.add(*own, check.deviationPercent);
    scores.fleetWhereOwnSpeaks.add(forecast, check.deviationPercent);
  }

  bool predictable(const Event& event) const {
    return sums_[event.tool].count > 0 && group_[event.tool].checks[event.check].phase == Phase::AsFound;
  }

  void learn(const Event& event) {
    const auto& check = group_[event.tool].checks[event.check];
    SlopeSums& sums = sums_[event.tool];
    const double x = exposureOf(group_[event.tool], event.check, exposure_);
    check.phase == Phase::AsLeft ? sums.addFirstOfSegment(x, check.deviationPercent)
                                 : sums.add(x, check.deviationPercent);
    last_[event.tool] = check.deviationPercent;
  }

 private:
  std::vector<SlopeSums> known() const {
    std::vector<SlopeSums> known;
    std::ranges::copy_if(sums_, std::back_inserter(known), [](const SlopeSums& one) { return one.count > 0; });
    return known;
  }

  std::span<const PastChecks> group_;
  Exposure exposure_;
  std::vector<SlopeSums> sums_;
  std::vector<double> last_;
  double widest_ = 0;
  std::optional<FleetModel> model_;
};

}  // namespace

void BacktestScores::add(const BacktestScores& other) {
  fleet.add(other.fleet);
  lastValue.add(other.lastValue);
  ownRegression.add(other.ownRegression);
  fleetWhereOwnSpeaks.add(other.fleetWhereOwnSpeaks);
  assumed += other.assumed;
}

BacktestScores backtest(std::span<const PastChecks> group, Exposure exposure, const std::vector<bool>& asked) {
  BacktestScores scores;
  const auto events = inOrderOfTime(group);
  Replay replay(group, exposure);
  for (auto day = events.begin(); day != events.end();) {
    const auto end = std::find_if(day, events.end(), [&](const Event& event) { return event.date != day->date; });
    const auto wanted = [&](const Event& event) {
      return (asked.empty() || asked[event.tool]) && replay.predictable(event);
    };
    if (std::any_of(day, end, wanted)) {
      replay.takeModel();
      // On a day with an adjustment the check as found comes first, so what it is predicted from is of earlier days.
      std::for_each(day, end, [&](const Event& event) {
        if (wanted(event)) replay.predict(event, scores);
      });
    }
    std::for_each(day, end, [&](const Event& event) { replay.learn(event); });
    day = end;
  }
  return scores;
}

}  // namespace steadyturn
