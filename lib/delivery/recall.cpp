#include "recall.h"

#include <algorithm>

#include "set_point_bracket.h"

namespace steadyturn {

namespace {

struct Known {
  double deviationPercent = 0;
  Uncertainty deviation;
  Uncertainty pull;
};

Known knownAt(const std::vector<KnownDeviation>& points, StatedTorque setting) {
  const auto around = bracket(points, setting);
  return {.deviationPercent = around.between(around.lower.meanDeviationPercent, around.upper.meanDeviationPercent),
          .deviation = {.standardPercent = around.between(around.lower.standardUncertaintyPercent,
                                                          around.upper.standardUncertaintyPercent),
                        .degreesOfFreedom = fewer(around.lower.degreesOfFreedom, around.upper.degreesOfFreedom)},
          .pull = around.nearest().pull};
}

Uncertainty larger(Uncertainty a, Uncertainty b) { return a.standardPercent > b.standardPercent ? a : b; }

// 0 at the last good check … 1 at the failed one. Both on one day: nothing is known but what was found bad.
double shareOfPeriod(const DoubtfulPeriod& period, Date date) {
  const double whole = static_cast<double>((period.foundBad - period.lastGood).count());
  if (!(whole > 0)) return 1;
  return std::clamp(static_cast<double>((date - period.lastGood).count()) / whole, 0.0, 1.0);
}

Known knownOn(const DoubtfulPeriod& period, const PastTightening& tightening) {
  const Known bad = knownAt(period.bad, tightening.setting);
  if (period.good.empty()) return bad;
  const Known good = knownAt(period.good, tightening.setting);
  const double share = shareOfPeriod(period, tightening.date);
  return {.deviationPercent = good.deviationPercent + share * (bad.deviationPercent - good.deviationPercent),
          .deviation = larger(good.deviation, bad.deviation),
          .pull = larger(good.pull, bad.pull)};
}

RecallFigure figureFor(const PastTightening& tightening, const Known& known) {
  const DeliveryResult delivered = deliver({.setting = tightening.setting,
                                            .window = tightening.window,
                                            .partLimit = tightening.partLimit,
                                            .adapter = {},
                                            .deviationPercent = known.deviationPercent,
                                            .deviation = known.deviation,
                                            .pull = known.pull,
                                            .resolution = tightening.resolution});
  return {.deviationPercent = known.deviationPercent,
          .probabilityBelow = delivered.probabilityBelow,
          .probabilityAbove = delivered.probabilityAbove,
          .probabilityOverPartLimit = delivered.probabilityOverPartLimit};
}

double doubt(const RecallFigure& figure) {
  return std::max(figure.probabilityOverPartLimit.value_or(0), figure.probabilityBelow + figure.probabilityAbove);
}

}  // namespace

RecallResult recallTightening(const DoubtfulPeriod& period, const PastTightening& tightening) {
  const Known onTheDay = knownOn(period, tightening);
  Known atWorst = onTheDay;  // nothing else is known better
  atWorst.deviationPercent = knownAt(period.bad, tightening.setting).deviationPercent;
  return {.onTheDay = figureFor(tightening, onTheDay), .worstCase = figureFor(tightening, atWorst)};
}

RecallFigure recallFigure(const std::vector<KnownDeviation>& onTheDay, const PastTightening& tightening) {
  return figureFor(tightening, knownAt(onTheDay, tightening.setting));
}

bool worseThan(const RecallResult& a, const RecallResult& b) { return doubt(a.onTheDay) > doubt(b.onTheDay); }

}  // namespace steadyturn
