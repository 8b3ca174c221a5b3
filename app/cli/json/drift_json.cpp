#include "drift_json.h"

#include "object_reader.h"
#include "value_json.h"

namespace steadyturn {
namespace {

DatedDeviation readCheck(const Json& value, const std::string& path, Problems& problems) {
  ObjectReader fields(value, path, problems, {"date", "phase", "deviation_percent"});
  DatedDeviation check{.date = fields.date("date")};
  if (const auto phase = fields.text("phase", "as_found, as_left")) check.phase = fields.adopt(parsePhase(*phase));
  check.deviationPercent = fields.number("deviation_percent");
  return check;
}

}  // namespace

Result<DriftInput> readDriftInput(const Json& document) {
  Problems problems;
  DriftInput drift;
  ObjectReader fields(document, "", problems, {"limit_percent", "confidence", "as_of", "interval_days", "checks"});
  drift.limitPercent = fields.number("limit_percent");
  drift.confidence = fields.optionalNumber("confidence").value_or(drift.confidence);
  drift.asOf = fields.date("as_of");
  drift.intervalDays = fields.wholeNumber("interval_days");
  const auto* checks = readArray(fields.require("checks", "an array of checks"), "checks", problems);
  for (std::size_t i = 0; checks != nullptr && i < checks->size(); ++i) {
    drift.checks.push_back(readCheck((*checks)[i], elementPath("checks", i), problems));
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return drift;
}

OrderedJson driftResultJson(const DriftResult& result) {
  return {{"slope_percent_per_year", numberJson(result.slopePercentPerYear)},
          {"slope_standard_error", numberJson(result.slopeStandardError)},
          {"slope_interval", intervalJson(result.slopeInterval)},
          {"p_value", numberJson(result.pValue)},
          {"residual_standard_deviation", numberJson(result.residualStandardDeviation)},
          {"degrees_of_freedom", result.degreesOfFreedom},
          {"segments", result.segments},
          {"predicted_percent", numberJson(result.predictedPercent)},
          {"prediction_interval", intervalJson(result.predictionInterval)},
          {"crossing_date", dateJson(result.crossingDate)},
          {"due_date", dateJson(result.dueDate)},
          {"state", writeState(result.state)}};
}

}  // namespace steadyturn
