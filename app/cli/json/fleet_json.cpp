#include "fleet_json.h"

#include <cmath>

#include "drift_json.h"
#include "object_reader.h"
#include "value_json.h"

namespace steadyturn {
namespace {

FleetCheck readFleetCheck(const Json& value, const std::string& path, Problems& problems) {
  ObjectReader fields(value, path, problems, {"date", "phase", "deviation_percent", "tightenings"});
  FleetCheck check{.found = {.date = fields.date("date")}, .tightenings = fields.optionalNumber("tightenings")};
  if (const auto phase = fields.text("phase", "as_found, as_left")) {
    check.found.phase = fields.adopt(parsePhase(*phase));
  }
  check.found.deviationPercent = fields.number("deviation_percent");
  return check;
}

FleetToolInput readFleetTool(const Json& value, const std::string& path, Problems& problems) {
  ObjectReader fields(value, path, problems, {"tool", "checks", "tightenings"});
  FleetToolInput tool{.tool = fields.text("tool", "the tool's name").value_or(""),
                      .checks = {},
                      .tightenings = fields.optionalNumber("tightenings")};
  const std::string checksPath = fields.pathOf("checks");
  const auto* checks = readArray(fields.require("checks", "an array of checks"), checksPath, problems);
  for (std::size_t i = 0; checks != nullptr && i < checks->size(); ++i) {
    tool.checks.push_back(readFleetCheck((*checks)[i], elementPath(checksPath, i), problems));
  }
  return tool;
}

std::optional<Exposure> readExposure(ObjectReader& fields, Problems& problems) {
  if (fields.find("exposure") == nullptr) return std::nullopt;
  constexpr const char* accepted = "days, tightenings, best";
  const auto typed = fields.text("exposure", accepted);
  if (!typed || *typed == "best") return std::nullopt;
  for (const Exposure exposure : {Exposure::Days, Exposure::Tightenings}) {
    if (*typed == writeExposure(exposure)) return exposure;
  }
  problems.push_back({.field = fields.pathOf("exposure"), .found = *typed, .accepted = accepted});
  return std::nullopt;
}

OrderedJson fleetToolJson(const FleetToolResult& tool) {
  OrderedJson json{{"tool", tool.tool}};
  json.update(fleetOutlookJson(tool.outlook));
  json["probability_within"] = numberJson(tool.probabilityWithin);
  json["crossing_date"] = dateJson(tool.crossingDate);
  json["due_date"] = dateJson(tool.dueDate);
  json["own"] = driftResultJson(tool.own);
  return json;
}

}  // namespace

Result<FleetInput> readFleetInput(const Json& document) {
  Problems problems;
  FleetInput fleet;
  ObjectReader fields(document, "", problems,
                      {"limit_percent", "confidence", "as_of", "interval_days", "exposure", "tools"});
  fleet.limitPercent = fields.number("limit_percent");
  fleet.confidence = fields.optionalNumber("confidence").value_or(fleet.confidence);
  fleet.asOf = fields.date("as_of");
  fleet.intervalDays = fields.wholeNumber("interval_days");
  fleet.exposure = readExposure(fields, problems);
  const auto* tools = readArray(fields.require("tools", "an array of tools"), "tools", problems);
  for (std::size_t i = 0; tools != nullptr && i < tools->size(); ++i) {
    fleet.tools.push_back(readFleetTool((*tools)[i], elementPath("tools", i), problems));
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return fleet;
}

std::string_view slopePer(Exposure exposure) { return exposure == Exposure::Days ? "year" : "5000 tightenings"; }

OrderedJson exposureScoresJson(const ExposureScores& scores) {
  return {
      {"days", numberJson(scores.days)}, {"tightenings", numberJson(scores.tightenings)}, {"checks", scores.checks}};
}

OrderedJson fleetModelJson(const Fleet& fleet, const std::string& assumption) {
  const FleetModel& model = fleet.model();
  const SlopeFigure slope = model.groupSlopeAdjusted();
  OrderedJson assumed = nullptr;
  if (!assumption.empty()) assumed = assumption;
  return {{"basis", fleet.isEstimated() ? "estimated" : "assumed"},
          {"assumption", std::move(assumed)},
          {"exposure", writeExposure(fleet.exposure())},
          {"slope_per", slopePer(fleet.exposure())},
          {"exposure_scores", exposureScoresJson(fleet.exposureScores())},
          {"tools_on_record", fleet.size()},
          {"tools_with_drift", fleet.toolsThatSpeak()},
          {"checks", fleet.checks()},
          {"slope_percent", numberJson(slope.slope)},
          {"slope_standard_error", numberJson(slope.standardError)},
          {"slope_degrees_of_freedom", numberJson(slope.degreesOfFreedom)},
          {"slope_standard_deviation", numberJson(std::sqrt(model.variances().slope))},
          {"residual_standard_deviation", numberJson(std::sqrt(model.variances().residual))},
          {"log_likelihood", numberJson(model.logLikelihood())}};
}

OrderedJson fleetOutlookJson(const FleetOutlook& outlook) {
  return {{"slope_percent", numberJson(outlook.slope.slope)},
          {"slope_standard_error", numberJson(outlook.slope.standardError)},
          {"borrowed_percent", numberJson(100 * outlook.slope.borrowed)},
          {"predicted_percent", numberJson(outlook.prediction.mean)},
          {"standard_error", numberJson(outlook.prediction.standardError)},
          {"degrees_of_freedom", numberJson(outlook.prediction.degreesOfFreedom)},
          {"prediction_interval", intervalJson(outlook.interval)}};
}

OrderedJson fleetResultJson(const FleetResult& result) {
  OrderedJson json = fleetModelJson(result.fleet, result.assumption);
  json["slope_interval"] = intervalJson(result.groupSlopeInterval);
  json["tools"] = OrderedJson::array();
  for (const FleetToolResult& tool : result.tools) json["tools"].push_back(fleetToolJson(tool));
  return json;
}

}  // namespace steadyturn
