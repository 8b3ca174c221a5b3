#include "delivery_json.h"

#include "object_reader.h"
#include "value_json.h"

namespace steadyturn {
namespace {

Window readWindow(const Json& value, Problems& problems) {
  ObjectReader fields(value, "window", problems, {"low", "high"});
  return {.low = fields.torque("low"), .high = fields.torque("high")};
}

Adapter readAdapter(const Json& value, Problems& problems) {
  ObjectReader fields(value, "adapter", problems, {"wrench_length_mm", "offset_mm", "angle_deg"});
  return {.wrenchLengthMm = fields.number("wrench_length_mm"),
          .offsetMm = fields.number("offset_mm"),
          .angleDeg = fields.number("angle_deg")};
}

void readDeviation(const Json& value, DeliveryInput& delivery, Problems& problems) {
  ObjectReader fields(value, "deviation", problems,
                      {"percent", "standard_uncertainty_percent", "degrees_of_freedom"});
  delivery.deviationPercent = fields.number("percent");
  delivery.deviation = {.standardPercent = fields.number("standard_uncertainty_percent"),
                        .degreesOfFreedom = fields.optionalNumber("degrees_of_freedom")};
}

Uncertainty readPull(const Json& value, Problems& problems) {
  ObjectReader fields(value, "pull", problems, {"standard_deviation_percent", "degrees_of_freedom"});
  return {.standardPercent = fields.number("standard_deviation_percent"),
          .degreesOfFreedom = fields.optionalNumber("degrees_of_freedom")};
}

}  // namespace

Result<DeliveryInput> readDeliveryInput(const Json& document) {
  Problems problems;
  DeliveryInput delivery;
  ObjectReader fields(document, "", problems,
                      {"setting", "window", "part_limit", "adapter", "deviation", "pull", "resolution",
                       "reference_standard_uncertainty_percent"});
  delivery.setting = fields.torque("setting");
  if (const Json* window = fields.require("window", "an object with the torques low and high")) {
    delivery.window = readWindow(*window, problems);
  }
  delivery.partLimit = fields.optionalTorque("part_limit");
  if (const Json* adapter = fields.find("adapter")) delivery.adapter = readAdapter(*adapter, problems);
  if (const Json* deviation =
          fields.require("deviation", "an object with percent and standard_uncertainty_percent")) {
    readDeviation(*deviation, delivery, problems);
  }
  if (const Json* pull = fields.require("pull", "an object with standard_deviation_percent")) {
    delivery.pull = readPull(*pull, problems);
  }
  delivery.resolution = fields.torque("resolution");
  delivery.referenceStandardUncertaintyPercent = fields.number("reference_standard_uncertainty_percent");
  if (problems.empty()) problems = problemsOf(delivery);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return delivery;
}

OrderedJson deliveryResultJson(const DeliveryResult& result, const std::optional<BestSetting>& best) {
  const auto setting = best ? std::optional(best->setting) : std::nullopt;
  const auto within = best ? std::optional(best->result.probabilityWithin) : std::nullopt;
  return {{"expected", torqueJson(result.expected)},
          {"interval", OrderedJson::array({torqueJson(result.interval.low), torqueJson(result.interval.high)})},
          {"probability_within", numberJson(result.probabilityWithin)},
          {"probability_below", numberJson(result.probabilityBelow)},
          {"probability_above", numberJson(result.probabilityAbove)},
          {"probability_over_part_limit", numberJson(result.probabilityOverPartLimit)},
          {"effective_degrees_of_freedom", numberJson(result.effectiveDegreesOfFreedom)},
          {"best_setting", torqueJson(setting)},
          {"probability_within_at_best", numberJson(within)}};
}

}  // namespace steadyturn
