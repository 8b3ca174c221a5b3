#include "best_setting.h"

#include <algorithm>
#include <cmath>

#include "graduations.h"
#include "pull_deviation.h"

namespace steadyturn {

namespace {

// Up to so many graduations are simply all tried: exact whatever shape the probability takes.
constexpr std::int64_t mostTried = 1000;

struct Trial {
  std::int64_t k = 0;
  double within = 0;
  double outside = 1;
  double fromMiddle = 0;  // N·m
  bool endangersPart = false;
};

// Far from the window, or with nothing uncertain, many settings are equally likely outside: then the nearer one.
bool better(const Trial& a, const Trial& b) {
  if (a.endangersPart != b.endangersPart) return b.endangersPart;
  const bool likely = a.within > 0.5 && b.within > 0.5;  // then their small difference shows in what is outside
  if (likely && a.outside != b.outside) return a.outside < b.outside;
  if (!likely && a.within != b.within) return a.within > b.within;
  return a.fromMiddle < b.fromMiddle;
}

class Search {
 public:
  Search(const std::function<DeliveryInput(StatedTorque)>& at, const Graduations& graduations, double risk)
      : at_(at), graduations_(graduations), risk_(risk) {
    const DeliveryInput any = at(graduations.at(graduations.first()));
    low_ = any.window.low.torque().newtonMetres();
    high_ = any.window.high.torque().newtonMetres();
    hasPartLimit_ = any.partLimit.has_value();
  }

  std::optional<std::int64_t> best() const {
    // Without a part's limit nothing far below the window can be best; with one, only that may be safe.
    const std::int64_t from = within(firstExpecting(0.5 * low_));
    const std::int64_t lowest = hasPartLimit_ ? graduations_.first() : from;
    const std::int64_t to = std::max(from, within(firstExpecting(1.5 * high_)));
    const Trial found = climb(to - lowest < mostTried ? scan(lowest, to) : halve(from, to));
    if (found.endangersPart) return std::nullopt;
    return found.k;
  }

 private:
  std::int64_t within(std::int64_t k) const { return std::clamp(k, graduations_.first(), graduations_.last()); }

  std::int64_t firstExpecting(double newtonMetres) const {
    return graduations_.firstWhere(
        [&](StatedTorque setting) { return expectedNewtonMetres(at_(setting)) >= newtonMetres; });
  }

  Trial trial(std::int64_t k) const {
    const DeliveryInput input = at_(graduations_.at(k));
    const Landing landing = landingOf(input, pullDeviation(input));
    return {.k = k,
            .within = landing.within,
            .outside = landing.below + landing.above,
            .fromMiddle = std::abs(expectedNewtonMetres(input) - (low_ + high_) / 2),
            .endangersPart = landing.overPartLimit && !(*landing.overPartLimit <= risk_)};
  }

  Trial scan(std::int64_t from, std::int64_t to) const {
    Trial best = trial(from);
    for (std::int64_t k = from + 1; k <= to; ++k) {
      if (const Trial next = trial(k); better(next, best)) best = next;
    }
    return best;
  }

  // For very fine graduations. The probability outside falls towards one setting and rises after it, and the
  // probability over a part's limit rises with the setting: both places are found by halving.
  Trial halve(std::int64_t from, std::int64_t to) const {
    while (from < to) {
      const std::int64_t middle = from + (to - from) / 2;
      Trial here = trial(middle);
      Trial next = trial(middle + 1);
      here.endangersPart = next.endangersPart = false;
      if (better(next, here)) {
        from = middle + 1;
      } else {
        to = middle;
      }
    }
    const Trial peak = trial(from);
    return peak.endangersPart ? highestSafe(peak) : peak;
  }

  Trial highestSafe(const Trial& endangering) const {
    Trial safe = endangering;
    while (safe.endangersPart && safe.k > graduations_.first()) {
      safe = trial(std::max(graduations_.first(), safe.k / 2));
    }
    if (safe.endangersPart) return safe;
    std::int64_t beyond = endangering.k;
    while (beyond - safe.k > 1) {
      const Trial middle = trial(safe.k + (beyond - safe.k) / 2);
      if (middle.endangersPart) {
        beyond = middle.k;
      } else {
        safe = middle;
      }
    }
    return safe;
  }

  // Steps on while a neighbour is better: covers a peak just outside the stretch that was looked at.
  Trial climb(Trial best) const {
    for (const int step : {-1, 1}) {
      while (graduations_.first() <= best.k + step && best.k + step <= graduations_.last()) {
        const Trial next = trial(best.k + step);
        if (!better(next, best)) break;
        best = next;
      }
    }
    return best;
  }

  const std::function<DeliveryInput(StatedTorque)>& at_;
  const Graduations& graduations_;
  double risk_;
  double low_ = 0;   // N·m
  double high_ = 0;  // N·m
  bool hasPartLimit_ = false;
};

}  // namespace

std::optional<BestSetting> findBestSetting(const std::function<DeliveryInput(StatedTorque)>& at,
                                           StatedTorque resolution, const SettingRange& range, double risk) {
  const Graduations graduations(resolution, range);
  if (graduations.empty()) return std::nullopt;
  const auto k = Search(at, graduations, risk).best();
  if (!k) return std::nullopt;
  const StatedTorque setting = graduations.at(*k);
  return BestSetting{.setting = setting, .result = deliver(at(setting))};
}

std::optional<BestSetting> findBestSetting(const DeliveryInput& input, double risk) {
  if (!input.resolution) return std::nullopt;
  const auto at = [&input](StatedTorque setting) {
    DeliveryInput moved = input;
    moved.setting = setting;
    return moved;
  };
  return findBestSetting(at, *input.resolution, SettingRange{}, risk);
}

}  // namespace steadyturn
