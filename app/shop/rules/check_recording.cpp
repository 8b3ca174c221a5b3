#include "check_recording.h"

#include <cmath>

#include "validate.h"

namespace steadyturn {

namespace {

// A target may pass the marked range by this share: marks are rounded, a wrong unit is not.
constexpr double rangeMargin = 0.02;

std::optional<double> torqueAbove0(Problems& problems, const std::string& text, const std::string& field) {
  const auto value = parseTorqueNumber(text, field);
  if (!value) {
    append(problems, value.error());
    return std::nullopt;
  }
  if (*value == 0) {
    problems.push_back({.field = field, .found = text, .accepted = "a torque above 0"});
    return std::nullopt;
  }
  return *value;
}

void checkRange(Problems& problems, StatedTorque target, const std::string& text, const Tool& tool) {
  const double inToolsUnit = target.in(tool.unit);
  const bool above = inToolsUnit > tool.maximum * (1 + rangeMargin);
  const bool below = tool.minimum && inToolsUnit < *tool.minimum * (1 - rangeMargin);
  if (!above && !below) return;
  const std::string from = tool.minimum ? writeNumber(*tool.minimum) : "0";
  problems.push_back({.field = "target",
                      .found = text + " " + std::string(unitCode(target.unit)),
                      .accepted = "within the range of " + tool.id + ", " + from + " to " +
                                  writeNumber(tool.maximum) + " " + std::string(unitCode(tool.unit)) +
                                  "; is the unit right?"});
}

SetPointReadings parsePoint(Problems& problems, const DraftPoint& point, Unit unit, std::vector<std::string>& kept) {
  SetPointReadings parsed;
  for (const auto& text : point.readings) {
    if (text.empty()) continue;
    if (const auto value = torqueAbove0(problems, text, "reading")) {
      parsed.readings.push_back({*value, unit});
      kept.push_back(text);
    }
  }
  return parsed;
}

void storeFacts(Check& check, const CheckResult& result) {
  check.limitPercent = result.limitPercent;
  check.verdict = result.verdict;
  for (std::size_t i = 0; i < check.points.size(); ++i) {
    const auto& from = result.points[i];
    auto& to = check.points[i];
    to.meanDeviation = from.meanDeviationPercent;
    to.repeatability = from.repeatabilityPercent;
    to.standardUncertainty = from.standardUncertaintyPercent;
    to.interval = from.intervalPercent;
    to.conformityProbability = from.conformityProbability;
    to.verdict = from.verdict;
  }
}

CheckInput inputFor(const Tool& tool, const Check& check, std::vector<SetPointReadings> points) {
  return {.kind = tool.kind,
          .minimum = tool.minimumTorque(),
          .maximum = tool.maximumTorque(),
          .resolution = tool.resolutionTorque(),
          .limitPercent = check.limitPercent,
          .reference = check.referenceUncertainty,
          .variation = check.variation,
          .rule = check.rule,
          .points = std::move(points)};
}

}  // namespace

Result<EvaluatedCheck> evaluateTyped(const CheckDraft& draft, const CheckBasis& basis) {
  Problems problems;
  EvaluatedCheck evaluated;
  auto& check = evaluated.check;
  check.tool = draft.tool;
  check.date = draft.date;
  check.phase = draft.phase;
  check.reference = draft.reference;
  check.by = draft.by;
  check.direction = draft.direction;
  check.temperatureC = draft.temperatureC;
  check.humidityPercent = draft.humidityPercent;
  check.note = draft.note;
  check.rule = basis.rule;
  check.variation = basis.variation;
  check.limitPercent = basis.tool->permittedPercent();
  if (basis.reference != nullptr) check.referenceUncertainty = basis.reference->uncertainty();
  checkText(problems, "by", draft.by);
  checkText(problems, "note", draft.note);

  std::vector<SetPointReadings> points;
  for (const auto& point : draft.points) {
    std::vector<std::string> kept;
    auto parsed = parsePoint(problems, point, draft.unit, kept);
    if (parsed.readings.empty()) continue;
    const auto target = torqueAbove0(problems, point.target, "target");
    if (!target) continue;
    parsed.target = {*target, draft.unit};
    checkRange(problems, parsed.target, point.target, *basis.tool);
    for (const auto& other : points) {
      if (other.target == parsed.target) {
        problems.push_back({.field = "target", .found = point.target, .accepted = "each set-point once"});
      }
    }
    check.points.push_back({.target = parsed.target, .readings = std::move(kept)});
    points.push_back(std::move(parsed));
  }
  if (points.empty() && problems.empty()) {
    problems.push_back({.field = "reading", .accepted = "at least one reading at one set-point"});
  }
  if (!problems.empty()) return tl::unexpected(problems);

  auto result = evaluateCheck(inputFor(*basis.tool, check, std::move(points)));
  if (!result) return tl::unexpected(result.error());
  if (basis.reference == nullptr) result->notEvaluated.emplace_back("reference");
  storeFacts(check, *result);
  evaluated.result = std::move(*result);
  return evaluated;
}

CheckInput inputOf(const Check& check, const Tool& tool) {
  std::vector<SetPointReadings> points;
  for (const auto& point : check.points) {
    SetPointReadings readings{.target = point.target, .readings = {}};
    for (const auto& text : point.readings) {
      if (const auto value = parseNumber(text, "reading")) readings.readings.push_back({*value, point.target.unit});
    }
    points.push_back(std::move(readings));
  }
  return inputFor(tool, check, std::move(points));
}

}  // namespace steadyturn
