#include "foresight_report.h"

#include "figures.h"

namespace steadyturn {
namespace {

FactsBlock facts(const ForesightReportData& data) {
  const WhatIf& whatIf = data.whatIf;
  FactsBlock block{.heading = "As of " + writeDate(data.asOf),
                   .facts = {{"for", whatIf.scope + ", tools: " + std::to_string(data.tools)},
                             {"interval now", std::to_string(whatIf.intervalNow) + " days"},
                             {"target: inside at its end", figure(100 * whatIf.target) + " %"},
                             {"interval that keeps it, by the fleet",
                              whatIf.keepsTarget ? std::to_string(*whatIf.keepsTarget) + " days"
                                                 : "none: missed from the first day"},
                             {"found on record", observedText(data.observed)}}};
  if (!data.assumption.empty()) block.facts.push_back({"basis", data.assumption});
  return block;
}

TableBlock intervalsTable(const WhatIf& whatIf) {
  TableBlock table{.heading = "What if",
                   .columns = {{"interval, days", Align::Right},
                               {"outside at its end, %", Align::Right},
                               {"tool most at risk, %", Align::Right},
                               {"checks a year", Align::Right}},
                   .rows = {}};
  for (const IntervalRisk& one : whatIf.risks) {
    table.rows.push_back({std::to_string(one.intervalDays), percentFigure(one.risk), percentFigure(one.worstRisk),
                          figure(one.checksPerYear)});
  }
  return table;
}

std::vector<std::string> scoreRow(const std::string& rule, const ForecastScore& score) {
  std::vector<std::string> row{rule, std::to_string(score.forecasts())};
  for (std::size_t level = 0; level < coverageLevels.size(); ++level) {
    const auto held = score.coverage(level);
    row.push_back(figure(held ? std::optional(100 * *held) : std::nullopt));
  }
  row.push_back(signedFigure(score.meanLogScore()));
  return row;
}

TableBlock scoresTable(const BacktestScores& scores) {
  TableBlock table{.heading = "Each past check as found, predicted from what was known before that day",
                   .columns = {{"rule"},
                               {"checks", Align::Right},
                               {"50 % held, %", Align::Right},
                               {"80 % held, %", Align::Right},
                               {"95 % held, %", Align::Right},
                               {"mean log score", Align::Right}},
                   .rows = {}};
  table.rows.push_back(scoreRow("fleet", scores.fleet));
  table.rows.push_back(scoreRow("last value, half its limit as standard deviation", scores.lastValue));
  table.rows.push_back(scoreRow("its own regression alone", scores.ownRegression));
  table.rows.push_back(scoreRow("fleet, on the same checks", scores.fleetWhereOwnSpeaks));
  return table;
}

TableBlock methodsTable(const std::vector<ReviewedInterval>& methods) {
  TableBlock table{.heading = "By the methods of ILAC-G24 / OIML D 10",
                   .columns = {{"method"}, {"days", Align::Right}, {"because"}},
                   .rows = {}};
  for (const ReviewedInterval& one : methods) {
    table.rows.push_back({one.method, one.intervalDays ? std::to_string(*one.intervalDays) : "-", one.because});
  }
  return table;
}

constexpr const char* method =
    "Risk: by a linear mixed model of tools alike (restricted maximum likelihood, best linear unbiased prediction), "
    "from each tool's newest check; a tool counts as outside when its set-point most at risk is. Effort: checks of "
    "all these tools a year of 365.25 days. Found on record: exact bounds by Clopper and Pearson. Held: the share of "
    "past checks inside the interval of that name; a rule that is honest holds as many as the name says. Log score: "
    "mean natural logarithm of the density given to what was found; higher is better. The steps of the methods of "
    "ILAC-G24 / OIML D 10:2022 are common practice: the guide prescribes none.";

}  // namespace

std::string observedText(const ObservedReliability& observed) {
  if (!observed.share) return "no such check on record";
  return std::to_string(observed.inside) + " of " + std::to_string(observed.checks) +
         " checks inside: " + figure(100 * *observed.share) + " % (" + figure(100 * observed.bounds->low) + " to " +
         figure(100 * observed.bounds->high) + " %), after " + figure(observed.meanDays) + " days on average";
}

ReportDocument buildForesightReport(const ForesightReportData& data) {
  std::vector<Block> blocks{facts(data), ChartBlock{riskChart(data.whatIf)}, ChartBlock{effortChart(data.whatIf)},
                            intervalsTable(data.whatIf)};
  if (!data.methods.empty()) blocks.emplace_back(methodsTable(data.methods));
  blocks.emplace_back(ChartBlock{coverageChart(data.scores, data.whatIf.scope)});
  blocks.emplace_back(scoresTable(data.scores));
  blocks.emplace_back(ParagraphBlock{.heading = "How this is worked out", .text = method});
  return {.title = "Checking interval: " + data.whatIf.scope,
          .number = "I-" + data.whatIf.scope + "-" + writeDate(data.asOf),
          .issuer = data.shopName,
          .issued = writeDate(data.asOf),
          .blocks = std::move(blocks)};
}

}  // namespace steadyturn
