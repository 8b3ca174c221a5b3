#include "sample_records.h"

namespace steadyturn {

Date day(int year, unsigned month, unsigned dayOfMonth) {
  return std::chrono::year{year} / std::chrono::month{month} / std::chrono::day{dayOfMonth};
}

Tool fullTool() {
  Tool tool;
  tool.id = "TW-07";
  tool.description = "workshop wrench, \"long\"; don't lend";
  tool.maker = "Eigenbau Süd";
  tool.serial = "0042";
  tool.kind = {ToolType::Setting, ToolClass::A};
  tool.unit = Unit::PoundForceFoot;
  tool.minimum = 20.1;
  tool.maximum = 150;
  tool.resolution = 0.1;
  tool.drive = "1/2 in square";
  tool.intervalDays = 180;
  tool.limitPercent = 3.5;
  tool.status = ToolStatus::Held;
  tool.statusReason = "fell from the bench";
  return tool;
}

Tool bareTool() {
  Tool tool;
  tool.id = "TW-01";
  tool.kind = {ToolType::Indicating, ToolClass::D};
  tool.maximum = 6;
  return tool;
}

Reference fullReference() {
  Reference reference;
  reference.id = "REF-1";
  reference.description = "bench transducer";
  reference.serial = "T-9";
  reference.certificate = "C 2026/118";
  reference.calibrated = day(2025, 11, 3);
  reference.due = day(2026, 11, 3);
  reference.expandedUncertaintyPercent = 0.4;
  reference.coverageFactor = 2.02;
  reference.errorPercent = -0.05;
  return reference;
}

Reference bareReference() {
  Reference reference;
  reference.id = "REF-0";
  reference.expandedUncertaintyPercent = 1;
  return reference;
}

Fastener fullFastener() {
  Fastener fastener;
  fastener.id = "SWEEPER-3-OIL";
  fastener.assembly = "oil filter";
  fastener.component = "housing cap, père modèle";
  fastener.thread = "M14x1.5";
  fastener.propertyClass = "8.8";
  fastener.partMaterial = "plastic";
  fastener.drive = "32 mm hexagon";
  fastener.unit = Unit::NewtonMetre;
  fastener.target = 18;
  fastener.low = 16;
  fastener.high = 20;
  fastener.angleDeg = 90;
  fastener.partLimit = 21.5;
  fastener.seal = "O-ring 70x3";
  fastener.renew = false;
  fastener.lubrication = "oil the ring";
  fastener.seatCheck = "flange touches all round";
  fastener.source = "depot sheet 12";
  fastener.revision = "sheet b";
  fastener.number = 1;
  fastener.stages = {{.value = 9}, {.value = 18}, {.value = 90, .angle = true}};
  fastener.sequence = "1 3 2 4";
  fastener.limitBasis = "proposal: 70 % of the stripping torque";
  fastener.enteredBy = "núria";
  return fastener;
}

Fastener bareFastener() {
  Fastener fastener;
  fastener.id = "PLOUGH-1-DRAIN";
  fastener.component = "drain plug";
  fastener.target = 40;
  return fastener;
}

Check fullCheck() {
  Check check;
  check.tool = "TW-07";
  check.date = day(2026, 2, 28);
  check.phase = Phase::AsLeft;
  check.reference = "REF-1";
  check.by = "Núria";
  check.direction = Direction::Counterclockwise;
  check.temperatureC = 21.5;
  check.humidityPercent = 48;
  check.note = "first line\nsecond line\ttab";
  check.limitPercent = 3.5;
  check.rule = DecisionRule::Guarded;
  check.referenceUncertainty = {0.4, 2.02, -0.05};
  check.variation = {.reproducibility = 0.3, .drive = 0.2, .interface = 0.25, .loadingPoint = 0.1};
  check.verdict = Verdict::ConditionalPass;
  check.points = {{.target = {20.1, Unit::PoundForceFoot},
                   .readings = {"20.10", "20.2", "19.9"},
                   .meanDeviation = -0.16,
                   .repeatability = 0.75,
                   .standardUncertainty = 0.51,
                   .interval = 1.23,
                   .conformityProbability = 0.999999,
                   .verdict = Verdict::Pass},
                  {.target = {150, Unit::PoundForceFoot},
                   .readings = {"149", "151.0"},
                   .meanDeviation = 1.0 / 3,
                   .repeatability = 0.9,
                   .standardUncertainty = 0.6,
                   .interval = 1.5,
                   .conformityProbability = 0.98,
                   .verdict = Verdict::ConditionalPass}};
  return check;
}

Check bareCheck() {
  Check check;
  check.tool = "TW-01";
  check.date = day(2024, 2, 29);
  check.limitPercent = 6;
  check.referenceUncertainty = {1, 2, 0};
  check.points = {
      {.target = {6, Unit::NewtonMetre}, .readings = {"5.5"}, .meanDeviation = 9.09, .repeatability = {}}};
  return check;
}

Tightening fullTightening() {
  Tightening tightening;
  tightening.job = "J-2026-014";
  tightening.vehicle = "sweeper 3";
  tightening.date = day(2026, 3, 2);
  tightening.fastener = "SWEEPER-3-OIL";
  tightening.tool = "TW-07";
  tightening.setting = "13.30";
  tightening.unit = Unit::PoundForceFoot;
  tightening.seatChecked = true;
  tightening.by = "petra";
  tightening.stagesDone = 2;
  tightening.sealRenewed = true;
  return tightening;
}

Tightening bareTightening() {
  Tightening tightening;
  tightening.job = "J-2026-015";
  tightening.date = day(2026, 3, 1);
  tightening.fastener = "PLOUGH-1-DRAIN";
  tightening.tool = "TW-01";
  tightening.setting = "40";
  return tightening;
}

}  // namespace steadyturn
