#include "records_json.h"

#include "value_json.h"

namespace steadyturn {
namespace {

OrderedJson textJson(const std::string& text) {
  if (text.empty()) return nullptr;
  return text;
}

template <typename Whole>
OrderedJson wholeJson(const std::optional<Whole>& number) {
  if (!number) return nullptr;
  return *number;
}

OrderedJson flagJson(std::optional<bool> flag) {
  if (!flag) return nullptr;
  return *flag;
}

OrderedJson readingsJson(const CheckPoint& point) {
  OrderedJson values = OrderedJson::array();
  for (const std::string& typed : point.readings) {
    const auto value = parseNumber(typed, "reading");
    values.push_back(value ? numberJson(*value) : OrderedJson(nullptr));
  }
  return {{"unit", unitCode(point.target.unit)}, {"values", std::move(values)}};
}

OrderedJson pointJson(const CheckPoint& point) {
  return {{"target", torqueJson(point.target)},
          {"readings", readingsJson(point)},
          {"mean_deviation_percent", numberJson(point.meanDeviation)},
          {"repeatability_percent", numberJson(point.repeatability)},
          {"standard_uncertainty_percent", numberJson(point.standardUncertainty)},
          {"interval_percent", numberJson(point.interval)},
          {"conformity_probability", numberJson(point.conformityProbability)},
          {"verdict", writeVerdict(point.verdict)}};
}

}  // namespace

OrderedJson toolJson(const Tool& tool) {
  return {{"tool", tool.id},
          {"description", textJson(tool.description)},
          {"maker", textJson(tool.maker)},
          {"serial", textJson(tool.serial)},
          {"type", writeType(tool.kind.type)},
          {"class", writeClass(tool.kind.cls)},
          {"min", numberJson(tool.minimum)},
          {"max", numberJson(tool.maximum)},
          {"unit", unitCode(tool.unit)},
          {"resolution", numberJson(tool.resolution)},
          {"drive", textJson(tool.drive)},
          {"interval_days", wholeJson(tool.intervalDays)},
          {"limit_percent", numberJson(tool.permittedPercent())},
          {"status", writeToolStatus(tool.status)},
          {"status_reason", textJson(tool.statusReason)}};
}

OrderedJson referenceJson(const Reference& reference) {
  const ReferenceUncertainty uncertainty = reference.uncertainty();
  return {{"reference", reference.id},
          {"description", textJson(reference.description)},
          {"serial", textJson(reference.serial)},
          {"certificate", textJson(reference.certificate)},
          {"calibrated", dateJson(reference.calibrated)},
          {"due", dateJson(reference.due)},
          {"expanded_uncertainty_percent", numberJson(uncertainty.expandedPercent)},
          {"coverage_factor", numberJson(uncertainty.coverageFactor)},
          {"error_percent", numberJson(uncertainty.errorPercent)}};
}

OrderedJson fastenerJson(const Fastener& fastener) {
  return {{"fastener", fastener.id},
          {"assembly", textJson(fastener.assembly)},
          {"component", textJson(fastener.component)},
          {"thread", textJson(fastener.thread)},
          {"property_class", textJson(fastener.propertyClass)},
          {"part_material", textJson(fastener.partMaterial)},
          {"drive", textJson(fastener.drive)},
          {"target", numberJson(fastener.target)},
          {"low", numberJson(fastener.low)},
          {"high", numberJson(fastener.high)},
          {"unit", unitCode(fastener.unit)},
          {"angle_deg", numberJson(fastener.angleDeg)},
          {"part_limit", numberJson(fastener.partLimit)},
          {"seal", textJson(fastener.seal)},
          {"renew", flagJson(fastener.renew)},
          {"lubrication", textJson(fastener.lubrication)},
          {"seat_check", textJson(fastener.seatCheck)},
          {"source", textJson(fastener.source)},
          {"revision", textJson(fastener.revision)},
          {"number", fastener.number},
          {"revision_reason", textJson(fastener.revisionReason)},
          {"stages", textJson(writeStages(fastener.stages))},
          {"sequence", textJson(fastener.sequence)},
          {"limit_basis", textJson(fastener.limitBasis)},
          {"entered_by", textJson(fastener.enteredBy)},
          {"released", fastener.released()},
          {"approved_by", textJson(fastener.approvedBy)},
          {"approved_on", dateJson(fastener.approvedOn)}};
}

OrderedJson checkJson(const Check& check) {
  OrderedJson points = OrderedJson::array();
  for (const CheckPoint& point : check.points) points.push_back(pointJson(point));
  return {{"check", check.id},
          {"tool", check.tool},
          {"date", writeDate(check.date)},
          {"phase", writePhase(check.phase)},
          {"reference", textJson(check.reference)},
          {"by", textJson(check.by)},
          {"direction", writeDirection(check.direction)},
          {"temperature_c", numberJson(check.temperatureC)},
          {"humidity_percent", numberJson(check.humidityPercent)},
          {"note", textJson(check.note)},
          {"limit_percent", numberJson(check.limitPercent)},
          {"rule", writeRule(check.rule)},
          {"verdict", writeVerdict(check.verdict)},
          {"points", std::move(points)},
          {"corrects", wholeJson(check.corrects)},
          {"correction_reason", textJson(check.correctionReason)},
          {"corrected_by", wholeJson(check.correctedBy)}};
}

OrderedJson tighteningJson(const Tightening& tightening) {
  return {{"job", tightening.job},
          {"vehicle", textJson(tightening.vehicle)},
          {"date", writeDate(tightening.date)},
          {"fastener", tightening.fastener},
          {"tool", tightening.tool},
          {"setting", torqueJson(tightening.settingTorque())},
          {"seat_checked", flagJson(tightening.seatChecked)},
          {"by", textJson(tightening.by)},
          {"stages_done", wholeJson(tightening.stagesDone)},
          {"seal_renewed", flagJson(tightening.sealRenewed)}};
}

OrderedJson jobSheetJson(const JobSheet& sheet) {
  const auto eventJson = [](const std::optional<JobEvent>& event) -> OrderedJson {
    if (!event) return nullptr;
    return {{"date", writeDate(event->date)}, {"by", textJson(event->by)}, {"note", textJson(event->note)}};
  };
  OrderedJson lines = OrderedJson::array(), tightenings = OrderedJson::array();
  for (const JobLine& line : sheet.lines) {
    lines.push_back({{"fastener", line.spec.id},
                     {"component", textJson(line.spec.component)},
                     {"listed", line.listed},
                     {"missing", missingOf(line)}});
    for (const Tightening& one : line.tightenings) tightenings.push_back(tighteningJson(one));
  }
  return {{"job", sheet.job.id},
          {"vehicle", textJson(sheet.job.vehicle)},
          {"service", textJson(sheet.job.opened ? sheet.job.opened->service : std::string())},
          {"opened", eventJson(sheet.job.opened)},
          {"closed", eventJson(sheet.job.closed)},
          {"lines", std::move(lines)},
          {"tightenings", std::move(tightenings)}};
}

}  // namespace steadyturn
