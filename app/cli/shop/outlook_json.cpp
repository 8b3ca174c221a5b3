#include "outlook_json.h"

#include <cmath>

#include "drift_json.h"
#include "fleet_json.h"
#include "value_json.h"

namespace steadyturn {
namespace {

OrderedJson optionJson(const Option& option) {
  const DeliveryResult& delivery = option.delivery;
  return {{"tool", option.tool},
          {"setting", torqueJson(option.setting)},
          {"probability_within", numberJson(delivery.probabilityWithin)},
          {"probability_below", numberJson(delivery.probabilityBelow)},
          {"probability_above", numberJson(delivery.probabilityAbove)},
          {"probability_over_part_limit", numberJson(delivery.probabilityOverPartLimit)}};
}

OrderedJson figureJson(const RecallFigure& figure) {
  return {{"deviation_percent", numberJson(figure.deviationPercent)},
          {"probability_below", numberJson(figure.probabilityBelow)},
          {"probability_above", numberJson(figure.probabilityAbove)},
          {"probability_over_part_limit", numberJson(figure.probabilityOverPartLimit)}};
}

OrderedJson decisionJson(const std::optional<RecallDecision>& decision) {
  if (!decision) return nullptr;
  return {{"action", writeRecallAction(decision->action)},
          {"reason", decision->reason},
          {"date", writeDate(decision->date)},
          {"by", decision->by}};
}

OrderedJson closingJson(const std::optional<RecallClosing>& closing) {
  if (!closing) return nullptr;
  return {{"date", writeDate(closing->date)}, {"by", closing->by}, {"note", closing->note}};
}

OrderedJson recallEntryJson(const RecallLine& entry) {
  OrderedJson json{{"job", entry.tightening.job},
                   {"date", writeDate(entry.tightening.date)},
                   {"fastener", entry.tightening.fastener},
                   {"setting", torqueJson(entry.tightening.settingTorque())}};
  json.update(figureJson(entry.result.onTheDay));
  json["worst_case"] = figureJson(entry.result.worstCase);
  json["by_fleet"] = entry.result.byFleet ? figureJson(*entry.result.byFleet) : OrderedJson(nullptr);
  json["vehicle"] = entry.tightening.vehicle;
  json["tightening"] = entry.tightening.id;
  json["decision"] = decisionJson(entry.decision);
  return json;
}

OrderedJson fleetWordJson(const FleetWord& word) {
  OrderedJson assumption = nullptr;
  if (!word.assumption.empty()) assumption = word.assumption;
  OrderedJson json{{"group", word.group},
                   {"basis", word.estimated ? "estimated" : "assumed"},
                   {"assumption", std::move(assumption)},
                   {"exposure", writeExposure(word.exposure)},
                   {"slope_per", slopePer(word.exposure)},
                   {"exposure_scores", exposureScoresJson(word.exposureScores)},
                   {"tools_on_record", word.tools},
                   {"tools_with_drift", word.toolsThatSpeak},
                   {"group_slope_percent", numberJson(word.groupSlope.slope)},
                   {"group_slope_standard_error", numberJson(word.groupSlope.standardError)},
                   {"slope_standard_deviation", numberJson(std::sqrt(word.variances.slope))},
                   {"residual_standard_deviation", numberJson(std::sqrt(word.variances.residual))}};
  json.update(fleetOutlookJson(word.outlook));
  json["probability_within"] = numberJson(word.probabilityWithin);
  json["crossing_date"] = dateJson(word.crossingDate);
  return json;
}

OrderedJson decidedJson(const ToolOutlook& outlook) {
  return {{"basis", writeOutlookBasis(outlook.basis)},
          {"predicted_percent", numberJson(outlook.deviationPercent)},
          {"standard_error", numberJson(outlook.standardError)},
          {"degrees_of_freedom", numberJson(outlook.degreesOfFreedom)},
          {"prediction_interval", intervalJson(outlook.interval)},
          {"crossing_date", dateJson(outlook.crossingDate)},
          {"due_date", dateJson(outlook.dueDate)},
          {"state", writeState(outlook.state)}};
}

}  // namespace

OrderedJson toolDriftJson(const ToolDrift& drift) {
  OrderedJson series = OrderedJson::array();
  for (const DriftSeries& one : drift.series) {
    OrderedJson json{{"target", torqueJson(one.target)}};
    json.update(driftResultJson(one.drift));
    json["fleet"] = fleetWordJson(one.fleet);
    json["outlook"] = decidedJson(one.outlook);
    series.push_back(std::move(json));
  }
  return {{"tool", drift.tool.id},
          {"series", std::move(series)},
          {"due_date", dateJson(drift.dueDate)},
          {"state", writeState(drift.state)}};
}

OrderedJson overviewJson(const ToolOverview& overview) {
  OrderedJson verdict = nullptr;
  if (overview.lastVerdict) verdict = writeVerdict(*overview.lastVerdict);
  return {{"tool", overview.tool.id},
          {"description", overview.tool.description},
          {"standing", writeStanding(overview.standing)},
          {"last_check", dateJson(overview.lastCheck)},
          {"last_verdict", std::move(verdict)},
          {"due_date", dateJson(overview.dueDate)},
          {"state", writeState(overview.state)},
          {"worst_target", torqueJson(overview.worstTarget)},
          {"slope_percent_per_year", numberJson(overview.slopePercentPerYear)},
          {"predicted_percent", numberJson(overview.predictedPercent)},
          {"prediction_interval", intervalJson(overview.predictionInterval)},
          {"prediction_by", overview.basis ? OrderedJson(writeOutlookBasis(*overview.basis)) : OrderedJson(nullptr)},
          {"limit_percent", numberJson(overview.limitPercent)}};
}

OrderedJson choiceJson(const FastenerChoice& choice) {
  OrderedJson options = OrderedJson::array();
  for (const Option& option : choice.choice.options) options.push_back(optionJson(option));
  OrderedJson refused = OrderedJson::array();
  for (const RefusedTool& one : choice.choice.refused) {
    refused.push_back({{"tool", one.tool}, {"reason", writeRefusal(one.refusal)}});
  }
  return {{"fastener", choice.fastener.id},
          {"warnings", choice.warnings},
          {"options", std::move(options)},
          {"refused", std::move(refused)}};
}

OrderedJson recallJson(const RecallList& recall) {
  OrderedJson tightenings = OrderedJson::array();
  for (const RecallLine& entry : recall.tightenings) tightenings.push_back(recallEntryJson(entry));
  return {{"tool", recall.tool},
          {"last_good", dateJson(recall.lastGood)},
          {"found_bad", dateJson(recall.foundBad)},
          {"tightenings", std::move(tightenings)},
          {"borrowed", recall.borrowed.empty() ? OrderedJson(nullptr) : OrderedJson(recall.borrowed)},
          {"undecided", recall.undecided()},
          {"closed", closingJson(recall.closing)}};
}

}  // namespace steadyturn
