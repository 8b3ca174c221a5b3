#include "check_again.h"

#include <algorithm>
#include <cmath>

#include "check_recording.h"

namespace steadyturn {

namespace {

struct Comparison {
  std::string text;

  void figure(const std::string& name, double stored, double again) {
    constexpr double rounding = 1e-9;
    if (std::abs(stored - again) <= rounding * std::max({1.0, std::abs(stored), std::abs(again)})) return;
    add(name, writeNumber(stored), writeNumber(again));
  }
  void verdict(const std::string& name, Verdict stored, Verdict again) {
    if (stored != again) add(name, std::string(writeVerdict(stored)), std::string(writeVerdict(again)));
  }
  void add(const std::string& name, const std::string& stored, const std::string& again) {
    text += (text.empty() ? "" : "; ") + name + " is " + stored + ", its readings give " + again;
  }
};

void comparePoint(Comparison& comparison, const CheckPoint& stored, const PointResult& again) {
  const auto at = " at " + writeTorque(stored.target);
  comparison.figure("mean deviation" + at, stored.meanDeviation, again.meanDeviationPercent);
  comparison.figure("repeatability" + at, stored.repeatability.value_or(-1), again.repeatabilityPercent.value_or(-1));
  comparison.figure("standard uncertainty" + at, stored.standardUncertainty, again.standardUncertaintyPercent);
  comparison.figure("interval" + at, stored.interval, again.intervalPercent);
  comparison.figure("conformity probability" + at, stored.conformityProbability, again.conformityProbability);
  comparison.verdict("verdict" + at, stored.verdict, again.verdict);
}

}  // namespace

std::string differenceOnCheckingAgain(const Check& check, const Tool& tool) {
  const auto again = evaluateCheck(inputOf(check, tool));
  if (!again) return "its readings can't be evaluated (" + again.error().front().field + ")";
  Comparison comparison;
  for (std::size_t i = 0; i < check.points.size(); ++i) comparePoint(comparison, check.points[i], again->points[i]);
  comparison.verdict("verdict", check.verdict, again->verdict);
  return comparison.text;
}

}  // namespace steadyturn
