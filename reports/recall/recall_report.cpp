#include "recall_report.h"

#include <fmt/format.h>

#include <map>

#include "figures.h"

namespace steadyturn {
namespace {

std::string atWorst(const RecallFigure& worst) {
  return fmt::format("{} / {} / {}", percentFigure(worst.probabilityBelow), percentFigure(worst.probabilityAbove),
                     percentFigure(worst.probabilityOverPartLimit));
}

TableBlock inDoubt(const RecallReportData& data) {
  TableBlock table{.heading = "Tightenings in doubt, worst first",
                   .columns = {{"No.", Align::Right},
                               {"Day"},
                               {"Job"},
                               {"Vehicle"},
                               {"Fastener"},
                               {"Set to", Align::Right},
                               {"Deviation, %", Align::Right},
                               {"Below, %", Align::Right},
                               {"Above, %", Align::Right},
                               {"Over part's limit, %", Align::Right},
                               {"At worst below / above / over, %"}},
                   .rows = {}};
  for (const auto& line : data.lines) {
    const RecallFigure& day = line.result.onTheDay;
    table.rows.push_back({std::to_string(line.tightening.id), writeDate(line.tightening.date), line.tightening.job,
                          line.tightening.vehicle, line.tightening.fastener,
                          writeTorque(line.tightening.settingTorque()), signedFigure(day.deviationPercent),
                          percentFigure(day.probabilityBelow), percentFigure(day.probabilityAbove),
                          percentFigure(day.probabilityOverPartLimit), atWorst(line.result.worstCase)});
  }
  return table;
}

// Where the tool's very first check failed: beside the deviation found bad, taken for all the days before, what tools
// like it make likely.
TableBlock borrowedTable(const RecallReportData& data) {
  TableBlock table{.heading = "The same with the drift borrowed from tools like it",
                   .columns = {{"No.", Align::Right},
                               {"Day"},
                               {"Deviation, %", Align::Right},
                               {"Below, %", Align::Right},
                               {"Above, %", Align::Right},
                               {"Over part's limit, %", Align::Right}},
                   .rows = {}};
  for (const auto& line : data.lines) {
    if (!line.result.byFleet) continue;
    const RecallFigure& day = *line.result.byFleet;
    table.rows.push_back({std::to_string(line.tightening.id), writeDate(line.tightening.date),
                          signedFigure(day.deviationPercent), percentFigure(day.probabilityBelow),
                          percentFigure(day.probabilityAbove), percentFigure(day.probabilityOverPartLimit)});
  }
  return table;
}

// Who has to be called in: each vehicle once, with what is to be looked at on it.
TableBlock byVehicle(const RecallReportData& data) {
  std::map<std::string, std::map<std::string, int>> vehicles;
  for (const auto& line : data.lines) ++vehicles[line.tightening.vehicle][line.tightening.fastener];
  TableBlock table{
      .heading = "By vehicle", .columns = {{"Vehicle"}, {"Tightenings", Align::Right}, {"Fasteners"}}, .rows = {}};
  for (const auto& [vehicle, counts] : vehicles) {
    int all = 0;
    std::string fasteners;
    for (const auto& [fastener, count] : counts) {
      all += count;
      fasteners += (fasteners.empty() ? "" : ", ") + fastener;
      if (count > 1) fasteners += fmt::format(" × {}", count);
    }
    table.rows.push_back({vehicle.empty() ? "not on record" : vehicle, std::to_string(all), fasteners});
  }
  return table;
}

TableBlock decisions(const RecallReportData& data) {
  TableBlock table{.heading = "Decisions",
                   .columns = {{"No.", Align::Right}, {"Decision"}, {"Reason, or what was done"}, {"Day"}, {"By"}},
                   .rows = {}};
  for (const auto& line : data.lines) {
    const auto number = std::to_string(line.tightening.id);
    if (!line.decision) {
      table.rows.push_back({number, "NOT DECIDED", "", "", ""});
      continue;
    }
    table.rows.push_back({number, std::string(writeRecallAction(line.decision->action)), line.decision->reason,
                          writeDate(line.decision->date), line.decision->by});
  }
  return table;
}

std::string closedWords(const RecallReportData& data) {
  if (!data.closing) return "not yet";
  return writeDate(data.closing->date) + (data.closing->by.empty() ? "" : ", " + data.closing->by) +
         (data.closing->note.empty() ? "" : ": " + data.closing->note);
}

FactsBlock facts(const RecallReportData& data) {
  return {.heading = "",
          .facts = {{"Tool", data.tool.id + (data.tool.description.empty() ? "" : ", " + data.tool.description)},
                    {"Failed check", fmt::format("no. {}, {}", data.failedCheck, writeDate(data.foundBad))},
                    {"Last good check", data.lastGood ? writeDate(*data.lastGood) : "none on record"},
                    {"Tightenings in doubt", std::to_string(data.lines.size())},
                    {"Closed", closedWords(data)}}};
}

constexpr const char* method =
    "Every tightening with this tool since its last good check. The deviation on the day is interpolated in time "
    "between "
    "that check and the failed one; at worst, the deviation found bad was there all along. Without a good check "
    "before, that is taken for every day. The probabilities are "
    "those "
    "of one pull's torque at the fastener lying below or above its window, or over the part's limit (Student t with "
    "the uncertainties of the two checks, JCGM 100). They say where to look first; they are no proof that a joint is "
    "sound. The vehicle maker's service data come first.";

}  // namespace

ReportDocument buildRecallReport(const RecallReportData& data) {
  ReportDocument report{.title = "Recall of " + data.tool.id,
                        .number = fmt::format("R-{}-{}", data.tool.id, data.failedCheck),
                        .issuer = data.shopPlace.empty() ? data.shopName : data.shopName + ", " + data.shopPlace,
                        .issued = writeDate(data.issued),
                        .blocks = {facts(data)}};
  if (data.lines.empty()) {
    report.blocks.emplace_back(
        ParagraphBlock{.heading = "Tightenings in doubt", .text = "None between the two checks."});
  } else {
    report.blocks.emplace_back(inDoubt(data));
    if (!data.borrowed.empty()) {
      report.blocks.emplace_back(borrowedTable(data));
      report.blocks.emplace_back(ParagraphBlock{.heading = "", .text = data.borrowed + "."});
    }
    report.blocks.emplace_back(byVehicle(data));
    report.blocks.emplace_back(decisions(data));
  }
  report.blocks.emplace_back(ParagraphBlock{.heading = "How this is worked out", .text = method});
  report.blocks.emplace_back(SignatureBlock{.roles = {"Decided by", "Closed by"}});
  return report;
}

}  // namespace steadyturn
