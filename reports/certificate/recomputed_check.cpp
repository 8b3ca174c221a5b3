#include "recomputed_check.h"

#include <cmath>

namespace steadyturn {
namespace {

constexpr double hair = 1e-6;

bool near(double a, double b) { return std::abs(a - b) <= hair; }

Result<SetPointReadings> readingsOf(const CheckPoint& point) {
  SetPointReadings read{.target = point.target, .readings = {}};
  for (const auto& typed : point.readings) {
    const auto value = parseTorqueNumber(typed, "readings");
    if (!value) return tl::unexpected(value.error());
    read.readings.push_back({*value, point.target.unit});
  }
  return read;
}

}  // namespace

Result<CheckResult> recompute(const Tool& tool, const Check& check) {
  CheckInput input{.kind = tool.kind,
                   .minimum = tool.minimumTorque(),
                   .maximum = tool.maximumTorque(),
                   .resolution = tool.resolutionTorque(),
                   .limitPercent = check.limitPercent,
                   .reference = check.referenceUncertainty,
                   .variation = check.variation,
                   .rule = check.rule,
                   .points = {}};
  for (const auto& point : check.points) {
    auto read = readingsOf(point);
    if (!read) return tl::unexpected(read.error());
    input.points.push_back(std::move(*read));
  }
  return evaluateCheck(input);
}

bool agrees(const Check& check, const CheckResult& result) {
  if (check.verdict != result.verdict || check.points.size() != result.points.size()) return false;
  for (std::size_t i = 0; i < check.points.size(); ++i) {
    const auto& stored = check.points[i];
    const auto& again = result.points[i];
    const bool same = near(stored.meanDeviation, again.meanDeviationPercent) &&
                      near(stored.standardUncertainty, again.standardUncertaintyPercent) &&
                      near(stored.interval, again.intervalPercent) && stored.verdict == again.verdict;
    if (!same) return false;
  }
  return true;
}

}  // namespace steadyturn
