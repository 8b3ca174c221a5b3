#include "check_again.h"

#include <algorithm>
#include <cmath>

#include "check_recording.h"

namespace steadyturn {

namespace {

struct Comparison {
  std::string text;
  const StatedTorque* target = nullptr;  // the set-point at hand; null for the check itself

  void figure(const char* name, double stored, double again) {
    constexpr double rounding = 1e-9;
    if (std::abs(stored - again) <= rounding * std::max({1.0, std::abs(stored), std::abs(again)})) return;
    add(name, writeNumber(stored), writeNumber(again));
  }
  void verdict(Verdict stored, Verdict again) {
    if (stored != again) add("verdict", writeVerdict(stored), writeVerdict(again));
  }
  void add(const char* name, std::string_view stored, std::string_view again) {
    text += text.empty() ? "" : "; ";
    text += name;
    if (target) text += " at " + writeTorque(*target);
    text.append(" is ").append(stored).append(", its readings give ").append(again);
  }
};

void comparePoint(Comparison& comparison, const CheckPoint& stored, const PointResult& again) {
  comparison.target = &stored.target;
  comparison.figure("mean deviation", stored.meanDeviation, again.meanDeviationPercent);
  comparison.figure("repeatability", stored.repeatability.value_or(-1), again.repeatabilityPercent.value_or(-1));
  comparison.figure("standard uncertainty", stored.standardUncertainty, again.standardUncertaintyPercent);
  comparison.figure("interval", stored.interval, again.intervalPercent);
  comparison.figure("conformity probability", stored.conformityProbability, again.conformityProbability);
  comparison.verdict(stored.verdict, again.verdict);
  comparison.target = nullptr;
}

}  // namespace

std::string differenceOnCheckingAgain(const Check& check, const Tool& tool) {
  const auto again = evaluateCheck(inputOf(check, tool));
  if (!again) return "its readings can't be evaluated (" + again.error().front().field + ")";
  Comparison comparison;
  for (std::size_t i = 0; i < check.points.size(); ++i) comparePoint(comparison, check.points[i], again->points[i]);
  comparison.verdict(check.verdict, again->verdict);
  return comparison.text;
}

}  // namespace steadyturn
