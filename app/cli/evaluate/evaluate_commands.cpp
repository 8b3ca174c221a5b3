#include "evaluate_commands.h"

#include <CLI/CLI.hpp>

#include "check_json.h"
#include "delivery_json.h"
#include "drift_json.h"
#include "fleet_json.h"
#include "joint_json.h"
#include "standard_streams.h"

namespace steadyturn {
namespace {

Result<OrderedJson> evaluateCheckDocument(const Json& document) {
  return readCheckInput(document).and_then(evaluateCheck).map(checkResultJson);
}

Result<OrderedJson> evaluateDriftDocument(const Json& document) {
  return readDriftInput(document).and_then(evaluateDrift).map(driftResultJson);
}

Result<OrderedJson> evaluateFleetDocument(const Json& document) {
  return readFleetInput(document).and_then(evaluateFleet).map(fleetResultJson);
}

Result<OrderedJson> evaluateDeliveryDocument(const Json& document) {
  return readDeliveryInput(document).map(
      [](const DeliveryInput& input) { return deliveryResultJson(deliver(input), findBestSetting(input)); });
}

Result<OrderedJson> evaluateJointDocument(const Json& document) {
  return readJointInput(document).and_then(evaluateJoint).map(jointResultJson);
}

struct Calculation {
  const char* name;
  const char* purpose;
  const char* example;
  Result<OrderedJson> (*evaluate)(const Json&);
};

constexpr Calculation calculations[]{
    {"check", "Evaluate a tool's check: ISO 6789-1 test, ISO 6789-2 uncertainty, verdict",
     R"(Deviations and uncertainties are in %. May be left out: limit_percent (then ISO 6789-1 by type, class and maximum),
variation_percent and each of its entries, coverage_factor (2), error_percent (0), rule (simple), tool.resolution;
tool.min is the lowest marked value, for the set-points asked for.
Example:
sturn evaluate check <<'END'
{"tool": {"type": "II", "class": "A", "max": {"value": 100, "unit": "N.m"}, "resolution": {"value": 1, "unit": "N.m"}},
 "reference": {"expanded_uncertainty_percent": 0.4},
 "points": [{"target": {"value": 20, "unit": "N.m"},
             "readings": {"unit": "N.m", "values": [19.8, 20.1, 20.0, 19.9, 20.2]}}]}
END)",
     evaluateCheckDocument},
    {"drift", "Fit a tool's drift across its adjustments and say when it is due",
     R"(Deviations are in %, slopes in % a year of 365.25 days. May be left out: confidence (0.95).
Example:
sturn evaluate drift <<'END'
{"limit_percent": 4, "confidence": 0.95, "as_of": "2026-06-01", "interval_days": 365,
 "checks": [{"date": "2023-01-16", "phase": "as_found", "deviation_percent": 0.2},
            {"date": "2024-01-10", "phase": "as_found", "deviation_percent": 1.1},
            {"date": "2024-01-10", "phase": "as_left", "deviation_percent": 0.1},
            {"date": "2025-01-14", "phase": "as_found", "deviation_percent": 0.9}]}
END)",
     evaluateDriftDocument},
    {"fleet", "Predict tools with few checks from the group they belong to",
     R"(Deviations are in %. May be left out: confidence (0.95), exposure (best: days or tightenings, whichever predicts
better), tightenings. Fields and model: FLEET.md among the program's papers.
Example:
sturn evaluate fleet <<'END'
{"limit_percent": 4, "as_of": "2026-06-01", "interval_days": 365,
 "tools": [{"tool": "W08", "checks": [{"date": "2024-01-10", "phase": "as_found", "deviation_percent": 0.9},
                                      {"date": "2025-01-14", "phase": "as_found", "deviation_percent": 1.2}]},
           {"tool": "W24", "checks": [{"date": "2026-05-04", "phase": "as_found", "deviation_percent": -0.3}]}]}
END)",
     evaluateFleetDocument},
    {"delivery", "Say what torque reaches the fastener, with what probability, and the best setting",
     R"(Deviations and uncertainties are in %, lengths in mm, angles in degrees. May be left out: part_limit, adapter,
degrees_of_freedom (then known so well that they count as infinite).
Example:
sturn evaluate delivery <<'END'
{"setting": {"value": 18, "unit": "N.m"},
 "window": {"low": {"value": 16, "unit": "N.m"}, "high": {"value": 20, "unit": "N.m"}},
 "deviation": {"percent": 1.2, "standard_uncertainty_percent": 0.8, "degrees_of_freedom": 6},
 "pull": {"standard_deviation_percent": 0.5, "degrees_of_freedom": 14},
 "resolution": {"value": 0.5, "unit": "N.m"}, "reference_standard_uncertainty_percent": 0.25}
END)",
     evaluateDeliveryDocument},
    {"joint", "Compute preload and tightening torque of a bolted joint (VDI 2230 Part 1)",
     R"(Lengths are in mm, forces in N; friction and utilisation are plain numbers. May be left out: bearing_diameter_mm
(then a hexagon head, ISO 4014, on a medium clearance hole, ISO 273).
The vehicle maker's service data come first.
Example:
echo '{"thread": "M8", "property_class": "8.8", "friction": {"thread": 0.12, "head": 0.12}, "utilisation": 0.9}' \
  | sturn evaluate joint)",
     evaluateJointDocument},
};

Result<Output> runOnStandardInput(const Calculation& calculation) {
  return readStandardInput()
      .and_then([](const std::string& text) { return parseDocument(text, "standard input"); })
      .and_then(calculation.evaluate)
      .map([](const OrderedJson& result) { return Output{.text = writeDocument(result), .cautions = {}}; });
}

}  // namespace

void addEvaluateCommands(CLI::App& app, Command& chosen) {
  CLI::App* evaluate =
      app.add_subcommand("evaluate", "Calculate without a shop: JSON on standard input, JSON on standard output");
  evaluate->require_subcommand(1);
  evaluate->footer(
      "Example: sturn evaluate drift < checks.json\nThe fields of each are in: sturn evaluate drift --help");
  for (const Calculation& calculation : calculations) {
    CLI::App* command = evaluate->add_subcommand(calculation.name, calculation.purpose);
    command->add_flag("--json")->description("Accepted for uniformity: the result is always JSON");
    command->footer(calculation.example);
    command->callback(
        [&calculation, &chosen] { chosen = [&calculation] { return runOnStandardInput(calculation); }; });
  }
}

}  // namespace steadyturn
