#include "check_json.h"

#include "object_reader.h"
#include "value_json.h"

namespace steadyturn {
namespace {

void readTool(const Json& value, CheckInput& check, Problems& problems) {
  ObjectReader fields(value, "tool", problems, {"type", "class", "min", "max", "resolution"});
  const auto type = fields.text("type", "I or II");
  const auto cls = fields.text("class", "A to E for Type I, A to G for Type II");
  if (type && cls) check.kind = fields.adopt(parseToolKind(*type, *cls));
  check.minimum = fields.optionalTorque("min");
  check.maximum = fields.torque("max");
  check.resolution = fields.optionalTorque("resolution");
}

void readReference(const Json& value, ReferenceUncertainty& reference, Problems& problems) {
  ObjectReader fields(value, "reference", problems,
                      {"expanded_uncertainty_percent", "coverage_factor", "error_percent"});
  reference.expandedPercent = fields.number("expanded_uncertainty_percent");
  reference.coverageFactor = fields.optionalNumber("coverage_factor").value_or(reference.coverageFactor);
  reference.errorPercent = fields.optionalNumber("error_percent").value_or(reference.errorPercent);
}

void readVariation(const Json& value, VariationSpans& variation, Problems& problems) {
  ObjectReader fields(value, "variation_percent", problems,
                      {"reproducibility", "drive", "interface", "loading_point"});
  variation.reproducibility = fields.optionalNumber("reproducibility");
  variation.drive = fields.optionalNumber("drive");
  variation.interface = fields.optionalNumber("interface");
  variation.loadingPoint = fields.optionalNumber("loading_point");
}

std::vector<StatedTorque> readReadings(const Json& value, const std::string& path, Problems& problems) {
  ObjectReader fields(value, path, problems, {"unit", "values"});
  const Unit unit = fields.unit("unit");
  const std::string valuesPath = fields.pathOf("values");
  std::vector<StatedTorque> readings;
  const auto* values = readArray(fields.require("values", "an array of numbers"), valuesPath, problems);
  for (std::size_t i = 0; values != nullptr && i < values->size(); ++i) {
    const auto number = readNumber((*values)[i], elementPath(valuesPath, i), problems);
    readings.push_back({number.value_or(0), unit});
  }
  return readings;
}

SetPointReadings readPoint(const Json& value, const std::string& path, Problems& problems) {
  ObjectReader fields(value, path, problems, {"target", "readings"});
  SetPointReadings point{.target = fields.torque("target"), .readings = {}};
  if (const Json* readings = fields.require("readings", R"({"unit": "N.m", "values": [19.8, 20.1]})")) {
    point.readings = readReadings(*readings, fields.pathOf("readings"), problems);
  }
  return point;
}

OrderedJson pointJson(const PointResult& point) {
  OrderedJson budget = OrderedJson::array();
  for (const BudgetEntry& entry : point.budget) {
    budget.push_back(
        {{"source", entry.source}, {"standard_uncertainty_percent", numberJson(entry.standardUncertaintyPercent)}});
  }
  return {{"target", torqueJson(point.target)},
          {"deviations_percent", point.deviationsPercent},
          {"mean_deviation_percent", numberJson(point.meanDeviationPercent)},
          {"repeatability_percent", numberJson(point.repeatabilityPercent)},
          {"standard_uncertainty_percent", numberJson(point.standardUncertaintyPercent)},
          {"coverage_factor", numberJson(point.coverageFactor)},
          {"expanded_uncertainty_percent", numberJson(point.expandedUncertaintyPercent)},
          {"interval_percent", numberJson(point.intervalPercent)},
          {"within_limit", point.withinLimit},
          {"conformity_probability", numberJson(point.conformityProbability)},
          {"verdict", writeVerdict(point.verdict)},
          {"budget", std::move(budget)}};
}

}  // namespace

Result<CheckInput> readCheckInput(const Json& document) {
  Problems problems;
  CheckInput check;
  ObjectReader fields(document, "", problems,
                      {"tool", "limit_percent", "reference", "variation_percent", "rule", "points"});
  if (const Json* tool = fields.require("tool", "an object with type, class, max and resolution")) {
    readTool(*tool, check, problems);
  }
  check.limitPercent = fields.optionalNumber("limit_percent");
  if (const Json* reference = fields.require("reference", "an object with expanded_uncertainty_percent")) {
    readReference(*reference, check.reference, problems);
  }
  if (const Json* variation = fields.find("variation_percent")) readVariation(*variation, check.variation, problems);
  if (fields.find("rule") != nullptr) {
    if (const auto rule = fields.text("rule", "simple, guarded")) check.rule = fields.adopt(parseRule(*rule));
  }
  const auto* points = readArray(fields.require("points", "an array of set-points"), "points", problems);
  for (std::size_t i = 0; points != nullptr && i < points->size(); ++i) {
    check.points.push_back(readPoint((*points)[i], elementPath("points", i), problems));
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return check;
}

OrderedJson checkResultJson(const CheckResult& result) {
  OrderedJson points = OrderedJson::array();
  for (const PointResult& point : result.points) points.push_back(pointJson(point));
  OrderedJson notes = OrderedJson::array();
  for (const Note& note : result.notes) notes.push_back(writeNote(note));
  return {{"verdict", writeVerdict(result.verdict)},
          {"limit_percent", numberJson(result.limitPercent)},
          {"points", std::move(points)},
          {"not_evaluated", result.notEvaluated},
          {"notes", std::move(notes)}};
}

}  // namespace steadyturn
