#include "history_report.h"

#include "control_drawing.h"
#include "figures.h"
#include "outlook_words.h"

namespace steadyturn {
namespace {

std::string intervalName(const HistoryData& data) {
  return "its prediction interval (" + figure(data.confidence * 100) + " %), %";
}

// What is due, and what else counts today.
FactsBlock countingFacts(const HistoryData& data) {
  FactsBlock block{
      .heading = "As of " + writeDate(data.asOf),
      .facts = {{"tool", data.tool.id + (data.tool.description.empty() ? "" : ", ") + data.tool.description},
                {"set-point", writeTorque(data.target)},
                {"permissible deviation", "± " + figure(data.limitPercent) + " %"}}};
  if (data.forecast) {
    block.facts.push_back({"state", std::string(writeState(data.forecast->outlook.state))});
    block.facts.push_back({"predicted by", std::string(writeOutlookBasis(data.forecast->outlook.basis))});
    block.facts.push_back({"rests on", borrowedSentence(data.forecast->outlook.basis, data.forecast->fleet)});
  }
  block.facts.push_back({"due", writeDate(dueDateOf(data))});
  return block;
}

FactsBlock fleetFacts(const HistoryData& data) {
  const FleetWord& fleet = data.forecast->fleet;
  const std::string per = fleet.exposure == Exposure::Days ? "a year" : "in 5000 tightenings";
  FactsBlock block{.heading = "Tools like it, by the fleet's model", .facts = {{"group", fleet.group}}};
  if (!fleet.assumption.empty()) block.facts.push_back({"basis", fleet.assumption});
  const std::vector<Fact> figures{
      {"tools that tell of a drift", std::to_string(fleet.toolsThatSpeak)},
      {"slope, % " + per, signedFigure(fleet.outlook.slope.slope)},
      {"slope's standard error, % " + per, figure(fleet.outlook.slope.standardError)},
      {"of the slope borrowed from the group, %", figure(100 * fleet.outlook.slope.borrowed)},
      {"expected mean deviation, %", signedFigure(fleet.outlook.prediction.mean)},
      {intervalName(data), intervalFigure(fleet.outlook.interval)},
      {"interval leaves the limits on", dateFigure(fleet.crossingDate)}};
  block.facts.insert(block.facts.end(), figures.begin(), figures.end());
  return block;
}

FactsBlock ownFacts(const HistoryData& data) {
  const DriftResult& drift = data.drift;
  return {.heading = "Its own regression",
          .facts = {{"slope, % a year", signedFigure(drift.slopePercentPerYear)},
                    {"slope's standard error, % a year", figure(drift.slopeStandardError)},
                    {"p (two-sided, slope = 0)", figure(drift.pValue)},
                    {"expected mean deviation, %", signedFigure(drift.predictedPercent)},
                    {intervalName(data), intervalFigure(drift.predictionInterval)},
                    {"interval leaves the limits on", dateFigure(drift.crossingDate)}}};
}

TableBlock checksTable(const HistoryData& data) {
  TableBlock table{.heading = "Checks at " + writeTorque(data.target),
                   .columns = {{"check", Align::Right},
                               {"date"},
                               {"phase"},
                               {"readings", Align::Right},
                               {"mean deviation, %", Align::Right},
                               {"expanded uncertainty (k = 2), %", Align::Right},
                               {"verdict"}},
                   .rows = {}};
  for (const PointSummary& point : data.points) {
    table.rows.push_back({std::to_string(point.check), writeDate(point.date),
                          point.phase == Phase::AsFound ? "as found" : "as left", std::to_string(point.readings),
                          signedFigure(point.meanDeviation), figure(2 * point.standardUncertainty),
                          std::string(writeVerdict(point.verdict))});
  }
  return table;
}

TableBlock eventsTable(const HistoryData& data) {
  TableBlock table{.heading = "What else happened", .columns = {{"date"}, {"event"}}, .rows = {}};
  for (const HistoryEvent& event : data.events) table.rows.push_back({writeDate(event.date), event.note});
  return table;
}

constexpr const char* method =
    "Its own regression: one slope for the tool and one level for each stretch between adjustments, by ordinary "
    "least "
    "squares; Student t intervals; a year is 365.25 days. It counts as soon as it has an interval. Before, tools "
    "like "
    "it count: a linear mixed model, one slope for the group and each tool's own drawn towards it by the share "
    "borrowed (restricted maximum likelihood, best linear unbiased prediction); where these have no record either, "
    "an "
    "assumption. The due date is the earlier of the last check plus the checking interval and the day on which the "
    "prediction interval that counts reaches outside the permissible deviation. Guard band: the newest check's "
    "expanded uncertainty inside the limits (ILAC-G8:09/2019). Control chart: individuals and exponentially weighted "
    "moving average, limits at three standard deviations from the moving range (NIST/SEMATECH e-Handbook of "
    "Statistical Methods, 6.3.2.2 and 6.3.2.4); what is usual for a tool is not what is permitted.";

std::vector<Block> blocksOf(const HistoryData& data) {
  std::vector<Block> blocks{ChartBlock{historyChart(data)}, countingFacts(data), ownFacts(data)};
  if (data.forecast && !data.points.empty()) blocks.emplace_back(fleetFacts(data));
  blocks.emplace_back(checksTable(data));
  if (auto control = controlChart(data)) blocks.emplace_back(ChartBlock{std::move(*control)});
  if (!data.events.empty()) blocks.emplace_back(eventsTable(data));
  blocks.emplace_back(ParagraphBlock{.heading = "How this is worked out", .text = method});
  return blocks;
}

}  // namespace

ReportDocument buildHistoryReport(const HistoryData& data, const std::string& shopName, Date issued) {
  return {.title = "History of " + data.tool.id,
          .number = "H-" + data.tool.id + "-" + writeDate(data.asOf),
          .issuer = shopName,
          .issued = writeDate(issued),
          .blocks = blocksOf(data)};
}

}  // namespace steadyturn
