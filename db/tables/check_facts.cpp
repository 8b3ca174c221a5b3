#include "check_facts.h"

#include <nlohmann/json.hpp>

#include "stored_values.h"

namespace steadyturn {

namespace {

Facts pointFacts(const CheckPoint& point) {
  Facts facts = Facts::object();
  facts["target"] = decimal(point.target.value);
  facts["unit"] = unitCode(point.target.unit);
  facts["readings"] = point.readings;
  facts["mean_deviation_percent"] = decimal(point.meanDeviation);
  facts["repeatability_percent"] = decimal(point.repeatability);
  facts["standard_uncertainty_percent"] = decimal(point.standardUncertainty);
  facts["interval_percent"] = decimal(point.interval);
  facts["conformity_probability"] = decimal(point.conformityProbability);
  facts["verdict"] = writeVerdict(point.verdict);
  return facts;
}

Facts ruleFacts(const Check& check) {
  Facts facts = Facts::object();
  facts["limit_percent"] = decimal(check.limitPercent);
  facts["rule"] = writeRule(check.rule);
  facts["reference_expanded_percent"] = decimal(check.referenceUncertainty.expandedPercent);
  facts["reference_coverage_factor"] = decimal(check.referenceUncertainty.coverageFactor);
  facts["reference_error_percent"] = decimal(check.referenceUncertainty.errorPercent);
  facts["span_reproducibility"] = decimal(check.variation.reproducibility);
  facts["span_drive"] = decimal(check.variation.drive);
  facts["span_interface"] = decimal(check.variation.interface);
  facts["span_loading_point"] = decimal(check.variation.loadingPoint);
  return facts;
}

}  // namespace

Facts checkFacts(const Check& check, std::int64_t id) {
  Facts facts = Facts::object();
  facts["id"] = id;
  facts["tool"] = check.tool;
  facts["date"] = writeDate(check.date);
  facts["phase"] = writePhase(check.phase);
  facts["reference"] = check.reference;
  facts["by"] = check.by;
  facts["direction"] = writeDirection(check.direction);
  facts["temperature_c"] = decimal(check.temperatureC);
  facts["humidity_percent"] = decimal(check.humidityPercent);
  facts["note"] = check.note;
  facts["evaluated_by"] = ruleFacts(check);
  facts["verdict"] = writeVerdict(check.verdict);
  facts["corrects"] = orNull(check.corrects);
  facts["correction_reason"] = check.correctionReason;
  Facts points = Facts::array();
  for (const auto& point : check.points) points.push_back(pointFacts(point));
  facts["points"] = std::move(points);
  return facts;
}

std::string writeReadings(const std::vector<std::string>& readings) { return Facts(readings).dump(); }

std::vector<std::string> parseReadings(const std::string& json) {
  const auto parsed = Facts::parse(json, nullptr, false);
  if (!parsed.is_array()) refuseDamaged(json);
  std::vector<std::string> readings;
  for (const auto& reading : parsed) {
    if (!reading.is_string()) refuseDamaged(json);
    readings.push_back(reading.get<std::string>());
  }
  return readings;
}

}  // namespace steadyturn
