// `sturn backtest` and `sturn interval`.
#include <CLI/CLI.hpp>

#include "figures.h"
#include "fleet_json.h"
#include "foresight_report.h"
#include "shop_commands.h"
#include "shop_fleet.h"
#include "text_table.h"
#include "typed_values.h"
#include "value_json.h"

namespace steadyturn {
namespace {

struct TypedFleet {
  std::string scope, group, asOf, target, intervals, minutes;
  bool json = false;
};

OrderedJson percentJson(std::optional<double> share) {
  return share ? numberJson(100 * *share) : OrderedJson(nullptr);
}

OrderedJson scoreJson(const ForecastScore& score) {
  return {{"forecasts", score.forecasts()},
          {"coverage_50_percent", percentJson(score.coverage(0))},
          {"coverage_80_percent", percentJson(score.coverage(1))},
          {"coverage_95_percent", percentJson(score.coverage(2))},
          {"mean_log_score", numberJson(score.meanLogScore())}};
}

OrderedJson scoresJson(const BacktestScores& scores) {
  return {{"fleet", scoreJson(scores.fleet)},
          {"last_value", scoreJson(scores.lastValue)},
          {"own_regression", scoreJson(scores.ownRegression)},
          {"fleet_where_own_speaks", scoreJson(scores.fleetWhereOwnSpeaks)},
          {"assumed", scores.assumed}};
}

OrderedJson backtestJson(const BacktestReport& report) {
  OrderedJson json{{"scope", report.scope}, {"as_of", writeDate(report.asOf)}};
  json.update(scoresJson(report.all));
  json["groups"] = OrderedJson::array();
  for (const GroupBacktest& group : report.groups) {
    OrderedJson one{{"group", group.group},
                    {"tools", group.tools},
                    {"exposure", writeExposure(group.exposure)},
                    {"log_score_by_days", numberJson(group.logScoreByDays)},
                    {"log_score_by_tightenings", numberJson(group.logScoreByTightenings)}};
    one.update(scoresJson(group.scores));
    json["groups"].push_back(std::move(one));
  }
  return json;
}

void scoreRow(TextTable& table, const char* rule, const ForecastScore& score) {
  const auto percent = [&](std::size_t level) {
    const auto share = score.coverage(level);
    return figure(share ? std::optional(100 * *share) : std::nullopt);
  };
  table.row({rule, std::to_string(score.forecasts()), percent(0), percent(1), percent(2),
             signedFigure(score.meanLogScore())});
}

std::string backtestText(const BacktestReport& report) {
  TextTable rules({{"rule"},
                   {"forecasts", Side::Right},
                   {"50 % held, %", Side::Right},
                   {"80 % held, %", Side::Right},
                   {"95 % held, %", Side::Right},
                   {"log score", Side::Right}});
  scoreRow(rules, "fleet", report.all.fleet);
  scoreRow(rules, "last value, half the limit", report.all.lastValue);
  scoreRow(rules, "own regression only", report.all.ownRegression);
  scoreRow(rules, "fleet, on the same checks", report.all.fleetWhereOwnSpeaks);
  TextTable groups(
      {{"group"}, {"tools", Side::Right}, {"by"}, {"forecasts", Side::Right}, {"log score", Side::Right}});
  for (const GroupBacktest& one : report.groups) {
    groups.row({one.group, std::to_string(one.tools), std::string(writeExposure(one.exposure)),
                std::to_string(one.scores.fleet.forecasts()), signedFigure(one.scores.fleet.meanLogScore())});
  }
  return "Each past check as found, predicted from what was known before that day (" + report.scope + ", as of " +
         writeDate(report.asOf) + "):\n\n" + rules.text() + '\n' + groups.text() +
         "\nHeld: the share of checks that fell inside the interval of that name. Log score: mean natural logarithm "
         "of "
         "the\ndensity given to what was found; higher is better. Forecasts by assumption, for want of a record "
         "then: " +
         std::to_string(report.all.assumed) + ".\n";
}

Result<Output> tellBacktest(Shop& shop, const TypedFleet& typed) {
  TypedValues values;
  const Date asOf = values.optionalDate(typed.asOf, "as-of").value_or(shop.today());
  if (!values.problems().empty()) return tl::unexpected(values.problems());
  const auto report = backtestShop(shop, typed.scope, asOf);
  if (!report) return tl::unexpected(report.error());
  return Output{.text = typed.json ? writeDocument(backtestJson(*report)) : backtestText(*report), .cautions = {}};
}

OrderedJson observedJson(const ObservedReliability& observed) {
  OrderedJson bounds = nullptr;
  if (observed.bounds) bounds = intervalJson(Interval{100 * observed.bounds->low, 100 * observed.bounds->high});
  return {{"checks", observed.checks},
          {"inside", observed.inside},
          {"mean_days", observed.checks > 0 ? numberJson(observed.meanDays) : OrderedJson(nullptr)},
          {"reliability_percent", percentJson(observed.share)},
          {"bounds_percent", std::move(bounds)}};
}

OrderedJson intervalReportJson(const IntervalReport& report, std::optional<double> minutes) {
  OrderedJson methods = OrderedJson::array();
  for (const ReviewedInterval& one : report.methods) {
    OrderedJson days = nullptr;
    if (one.intervalDays) days = *one.intervalDays;
    methods.push_back({{"method", one.method}, {"interval_days", std::move(days)}, {"because", one.because}});
  }
  OrderedJson risks = OrderedJson::array();
  for (const IntervalRisk& one : report.risks) {
    OrderedJson row{{"interval_days", one.intervalDays},
                    {"risk_percent", numberJson(100 * one.risk)},
                    {"worst_risk_percent", numberJson(100 * one.worstRisk)},
                    {"checks_per_year", numberJson(one.checksPerYear)}};
    row["hours_per_year"] = minutes ? numberJson(one.checksPerYear * *minutes / 60) : OrderedJson(nullptr);
    risks.push_back(std::move(row));
  }
  OrderedJson recommended = nullptr;
  if (report.recommendedDays) recommended = *report.recommendedDays;
  OrderedJson assumption = nullptr;
  if (report.assumed) assumption = report.assumption;
  return {{"scope", report.scope},
          {"as_of", writeDate(report.asOf)},
          {"tools", report.tools},
          {"interval_days", report.policyDays},
          {"target_percent", numberJson(100 * report.target)},
          {"observed", observedJson(report.observed)},
          {"observed_at_interval", observedJson(report.observedAtPolicy)},
          {"fleet_interval_days", std::move(recommended)},
          {"basis", report.assumed ? "assumed" : "estimated"},
          {"assumption", std::move(assumption)},
          {"methods", std::move(methods)},
          {"what_if", std::move(risks)}};
}

std::string intervalText(const IntervalReport& report, std::optional<double> minutes) {
  const std::string keeps = report.recommendedDays ? std::to_string(*report.recommendedDays) + " days"
                                                   : "none: the target is missed from the first day";
  std::string text = factLines({{"for", report.scope + ", tools: " + std::to_string(report.tools.size())},
                                {"as of", writeDate(report.asOf)},
                                {"interval now", std::to_string(report.policyDays) + " days"},
                                {"found inside", observedText(report.observed)},
                                {"at that interval", observedText(report.observedAtPolicy)},
                                {"keeps " + figure(100 * report.target) + " %", keeps}});
  if (report.assumed) text += report.assumption + '\n';
  if (!report.methods.empty()) {
    TextTable methods({{"method"}, {"days", Side::Right}, {"because"}});
    for (const ReviewedInterval& one : report.methods) {
      methods.row({one.method, one.intervalDays ? std::to_string(*one.intervalDays) : "-", one.because});
    }
    text += "\nBy the methods of ILAC-G24 / OIML D 10 (their steps here: common practice):\n" + methods.text();
  }
  std::vector<TextColumn> columns{{"interval, days", Side::Right},
                                  {"outside at its end, %", Side::Right},
                                  {"worst tool, %", Side::Right},
                                  {"checks a year", Side::Right}};
  if (minutes) columns.push_back({"hours a year", Side::Right});
  TextTable risks(columns);
  for (const IntervalRisk& one : report.risks) {
    std::vector<std::string> cells{std::to_string(one.intervalDays), percentFigure(one.risk),
                                   percentFigure(one.worstRisk), figure(one.checksPerYear)};
    if (minutes) cells.push_back(figure(one.checksPerYear * *minutes / 60));
    risks.row(cells);
  }
  return text + "\nWhat if (by the fleet, from each tool's newest check):\n" + risks.text();
}

std::vector<int> typedIntervals(const std::string& typed, TypedValues& values) {
  std::vector<int> days;
  for (std::size_t begin = 0; begin <= typed.size();) {
    const auto end = std::min(typed.find(',', begin), typed.size());
    days.push_back(values.optionalWhole(typed.substr(begin, end - begin), "intervals").value_or(0));
    begin = end + 1;
  }
  return days;
}

Result<Output> tellInterval(Shop& shop, const TypedFleet& typed) {
  TypedValues values;
  IntervalQuestion question{.scope = typed.group.empty() ? typed.scope : typed.group,
                            .asOf = values.optionalDate(typed.asOf, "as-of").value_or(shop.today())};
  question.target = values.optionalNumber(typed.target, "target").value_or(95) / 100;
  if (!typed.intervals.empty()) question.intervals = typedIntervals(typed.intervals, values);
  const auto minutes = values.optionalNumber(typed.minutes, "minutes");
  if (minutes && !(*minutes > 0)) {
    values.refuse({.field = "minutes", .found = typed.minutes, .accepted = "minutes that a check takes, above 0"});
  }
  if (!values.problems().empty()) return tl::unexpected(values.problems());
  const auto report = analyseInterval(shop, question);
  if (!report) return tl::unexpected(report.error());
  return Output{
      .text = typed.json ? writeDocument(intervalReportJson(*report, minutes)) : intervalText(*report, minutes),
      .cautions = {}};
}

}  // namespace

void addFleetCommands(Context& context) {
  const auto typed = std::make_shared<TypedFleet>();
  const char* asOfHelp = "The day it is asked for, such as 2026-06-01; else today";
  const char* scopeHelp = "A tool's mark, or words of a group such as \"type II class A\"; else the whole shop";

  CLI::App* backtest = context.add(context.app(), "backtest",
                                   "Hold what would have been predicted at each past check against what was found",
                                   "sturn backtest W08");
  backtest->add_option("SCOPE", typed->scope, scopeHelp)->type_name("");
  backtest->add_option("--as-of", typed->asOf, asOfHelp)->type_name("");
  backtest->add_flag("--json", typed->json,
                     R"(Print {"scope", "as_of", "fleet", "last_value", "own_regression", …, "groups"})");
  context.runs(backtest, [=](Shop& shop) { return tellBacktest(shop, *typed); });

  CLI::App* interval = context.add(context.app(), "interval",
                                   "Say how long the checking interval may be, and what another one would cost",
                                   "sturn interval W08 --target 95");
  CLI::Option* tool =
      interval->add_option("TOOL", typed->scope, "The tool's mark; else the whole shop")->type_name("");
  interval->add_option("--group", typed->group, "Words of a group, such as \"type II class A\", instead of a tool")
      ->type_name("WORDS")
      ->excludes(tool);
  interval->add_option("--as-of", typed->asOf, asOfHelp)->type_name("");
  interval->add_option("--target", typed->target, "Inside at the end of the interval, % (95)")->type_name("");
  interval->add_option("--intervals", typed->intervals, "Days to try, such as 91,183,365")->type_name("");
  interval->add_option("--minutes", typed->minutes, "That one check takes, for the hours a year")->type_name("");
  interval->add_flag("--json", typed->json,
                     R"(Print {"scope", "observed", "fleet_interval_days", "methods", "what_if", …})");
  context.runs(interval, [=](Shop& shop) { return tellInterval(shop, *typed); });
}

}  // namespace steadyturn
