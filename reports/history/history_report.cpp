#include "history_report.h"

#include "control_drawing.h"
#include "figures.h"

namespace steadyturn {
namespace {

FactsBlock driftFacts(const HistoryData& data) {
  const DriftResult& drift = data.drift;
  return {.heading = "Drift as of " + writeDate(data.asOf),
          .facts = {{"tool", data.tool.id + (data.tool.description.empty() ? "" : ", ") + data.tool.description},
                    {"set-point", writeTorque(data.target)},
                    {"permissible deviation", "± " + figure(data.limitPercent) + " %"},
                    {"state", std::string(writeState(drift.state))},
                    {"slope, % a year", signedFigure(drift.slopePercentPerYear)},
                    {"slope's standard error, % a year", figure(drift.slopeStandardError)},
                    {"p (two-sided, slope = 0)", figure(drift.pValue)},
                    {"expected mean deviation, %", signedFigure(drift.predictedPercent)},
                    {"its prediction interval (" + figure(data.confidence * 100) + " %), %",
                     intervalFigure(drift.predictionInterval)},
                    {"interval leaves the limits on", dateFigure(drift.crossingDate)},
                    {"due", writeDate(drift.dueDate)}}};
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
    "One slope for the tool and one level for each stretch between adjustments, by ordinary least squares; Student t "
    "intervals; a year is 365.25 days. The due date is the earlier of the last check plus the checking interval and "
    "the "
    "day on which the prediction interval reaches outside the permissible deviation. Guard band: the newest check's "
    "expanded uncertainty inside the limits (ILAC-G8:09/2019). Control chart: individuals and exponentially weighted "
    "moving average, limits at three standard deviations from the moving range (NIST/SEMATECH e-Handbook of "
    "Statistical Methods, 6.3.2.2 and 6.3.2.4); what is usual for a tool is not what is permitted.";

std::vector<Block> blocksOf(const HistoryData& data) {
  std::vector<Block> blocks{ChartBlock{historyChart(data)}, driftFacts(data), checksTable(data)};
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
