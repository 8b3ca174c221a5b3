#include "demo_reports.h"

#include <stdexcept>

namespace steadyturn::test {
namespace {

Date on(const char* date) { return parseDate(date, "date").value(); }

Tool demoTool() {
  Tool tool;
  tool.id = "TW-07";
  tool.description = "Wheel bay, long handle";
  tool.maker = "Harbourside Tools";
  tool.serial = "HT-20419";
  tool.kind = {ToolType::Setting, ToolClass::A};
  tool.minimum = 20;
  tool.maximum = 100;
  tool.resolution = 1;
  tool.drive = "1/2 in square";
  return tool;
}

Check demoCheck(std::int64_t id, Phase phase, std::vector<CheckPoint> points) {
  Check check;
  check.id = id;
  check.tool = "TW-07";
  check.date = on("2026-03-14");
  check.phase = phase;
  check.reference = "R-1";
  check.by = "M. Quill";
  check.temperatureC = 21.5;
  check.humidityPercent = 45;
  check.limitPercent = 4;
  check.referenceUncertainty = {.expandedPercent = 0.4, .coverageFactor = 2, .errorPercent = 0.1};
  check.variation.reproducibility = 0.3;
  check.variation.drive = 0.2;
  check.points = std::move(points);
  return check;
}

CheckPoint demoPoint(double target, std::vector<std::string> readings) {
  CheckPoint point;
  point.target = {target, Unit::NewtonMetre};
  point.readings = std::move(readings);
  return point;
}

}  // namespace

void evaluateStored(const Tool& tool, Check& check) {
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
    SetPointReadings read{.target = point.target, .readings = {}};
    for (const auto& typed : point.readings) read.readings.push_back({std::stod(typed), point.target.unit});
    input.points.push_back(read);
  }
  const auto result = evaluateCheck(input);
  if (!result) throw std::invalid_argument("the demo check can't be evaluated");
  check.verdict = result->verdict;
  for (std::size_t i = 0; i < check.points.size(); ++i) {
    auto& stored = check.points[i];
    const auto& point = result->points[i];
    stored.meanDeviation = point.meanDeviationPercent;
    stored.repeatability = point.repeatabilityPercent;
    stored.standardUncertainty = point.standardUncertaintyPercent;
    stored.interval = point.intervalPercent;
    stored.conformityProbability = point.conformityProbability;
    stored.verdict = point.verdict;
  }
}

CertificateData demoCertificate() {
  CertificateData data;
  data.shopName = "Depot North";
  data.shopPlace = "Quay Road 4, Northhaven";
  data.tool = demoTool();
  data.check = demoCheck(42, Phase::AsLeft,
                         {demoPoint(20, {"19.8", "20.1", "20.0", "19.9", "20.2"}),
                          demoPoint(60, {"60.4", "60.1", "60.6", "60.3", "60.2"}),
                          demoPoint(100, {"101.2", "100.8", "101.0", "101.4", "100.9"})});
  data.before = demoCheck(41, Phase::AsFound,
                          {demoPoint(20, {"19.0", "19.1", "19.0", "18.9", "19.2"}),
                           demoPoint(60, {"57.4", "57.1", "57.6", "57.3", "57.2"}),
                           demoPoint(100, {"96.2", "96.8", "96.0", "96.4", "96.9"})});
  evaluateStored(data.tool, data.check);
  evaluateStored(data.tool, *data.before);
  data.reference = Reference{.id = "R-1",
                             .description = "Torque transducer with display, 200 N·m",
                             .serial = "5521",
                             .certificate = "K-2026-0117",
                             .calibrated = on("2026-01-12"),
                             .due = on("2027-01-12"),
                             .expandedUncertaintyPercent = 0.4,
                             .coverageFactor = 2,
                             .errorPercent = 0.1};
  data.issued = on("2026-03-15");
  data.number = "C-42";
  data.dueDate = on("2027-03-14");
  data.ledger = LedgerPlace{.sequence = 583,
                            .leaf = std::string(64, 'a'),
                            .size = 1288,
                            .root = std::string(64, 'b'),
                            .path = {std::string(64, 'c'), std::string(64, 'd')}};
  return data;
}

PointSummary summary(const char* date, Phase phase, double deviation) {
  PointSummary point;
  point.tool = "TW-07";
  point.date = on(date);
  point.phase = phase;
  point.target = {60, Unit::NewtonMetre};
  point.readings = 5;
  point.meanDeviation = deviation;
  point.standardUncertainty = 0.3;
  point.verdict = std::abs(deviation) <= 4 ? Verdict::Pass : Verdict::Fail;
  return point;
}

HistoryData historyOf(std::vector<PointSummary> points, Date asOf) {
  HistoryData data{.tool = demoTool(),
                   .target = {60, Unit::NewtonMetre},
                   .points = std::move(points),
                   .limitPercent = 4,
                   .confidence = 0.95,
                   .asOf = asOf,
                   .intervalDays = 365,
                   .drift = {}};
  DriftInput input{.limitPercent = 4, .confidence = 0.95, .asOf = asOf, .intervalDays = 365, .checks = {}};
  for (const auto& point : data.points) input.checks.push_back({point.date, point.phase, point.meanDeviation});
  if (!input.checks.empty()) data.drift = evaluateDrift(input).value();
  return data;
}

HistoryData demoHistory() {
  using enum Phase;
  return historyOf(
      {summary("2020-02-11", AsFound, 0.3), summary("2020-08-04", AsFound, 0.9), summary("2021-02-16", AsFound, 1.2),
       summary("2021-08-10", AsFound, 2.0), summary("2022-02-08", AsFound, 2.3), summary("2022-08-15", AsFound, 3.1),
       summary("2023-02-14", AsFound, 4.4), summary("2023-02-14", AsLeft, 0.1), summary("2023-08-22", AsFound, 0.3),
       summary("2024-02-13", AsFound, 0.9), summary("2024-08-20", AsFound, 1.3), summary("2025-02-11", AsFound, 1.7),
       summary("2025-09-02", AsFound, 2.4), summary("2026-02-10", AsFound, 2.6)},
      on("2026-06-01"));
}

}  // namespace steadyturn::test
