#include <algorithm>
#include <cctype>
#include <map>

#include "fleet_assumption.h"
#include "inside.h"
#include "shop_fleet.h"

namespace steadyturn {

namespace {

std::string lowered(std::string text) {
  std::ranges::transform(text, text.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

// Every series of the book with its whole record up to the book's day.
std::vector<PastChecks> pastOf(const FleetBook& book, const CheckTable& checks, Date asOf) {
  std::vector<PastChecks> past(book.series().size());
  for (std::size_t i = 0; i < past.size(); ++i) past[i].permittedPercent = book.series()[i].tool->permittedPercent();
  checks.forEachSummary([&](const PointSummary& point) {
    if (point.date > asOf) return;
    const auto index = book.indexOf(point.tool, point.target, point.direction);
    if (!index) return;
    past[*index].checks.push_back(
        {.date = point.date, .phase = point.phase, .deviationPercent = point.meanDeviation});
    if (const auto count = book.tighteningsUpTo(point.tool, point.date)) past[*index].tightenings.push_back(*count);
  });
  return past;
}

// Which series a scope means; none: nothing answers to it.
std::vector<bool> scopeOf(const FleetBook& book, const std::string& scope) {
  const auto& series = book.series();
  std::vector<bool> meant(series.size(), scope.empty());
  if (scope.empty()) return meant;
  for (std::size_t i = 0; i < series.size(); ++i) meant[i] = series[i].tool->id == scope;
  if (std::ranges::find(meant, true) != meant.end()) return meant;
  for (std::size_t i = 0; i < series.size(); ++i) {
    meant[i] = lowered(book.groups()[series[i].group].name).find(lowered(scope)) != std::string::npos;
  }
  return meant;
}

Problem nothingMeant(const std::string& scope, const FleetBook& book) {
  std::string names;
  for (const auto& group : book.groups()) names += (names.empty() ? "" : "; ") + group.name;
  return {.kind = ProblemKind::NotFound,
          .field = "scope",
          .found = scope.empty() ? "a shop without checks" : scope,
          .accepted = names.empty() ? "a tool with at least one check"
                                    : "a tool with a check, or words of a group: " + names};
}

bool counted(const std::vector<PastChecks>& group) {
  return std::ranges::all_of(group, [](const auto& one) { return one.tightenings.size() == one.checks.size(); });
}

GroupBacktest scored(const FleetBook::Group& group, const std::vector<PastChecks>& past,
                     const std::vector<bool>& asked) {
  GroupBacktest result;
  result.group = group.name;
  result.exposure = group.fleet.exposure();
  std::vector<PastChecks> members;
  std::vector<bool> wanted;
  for (const std::size_t index : group.series) {
    members.push_back(past[index]);
    wanted.push_back(asked[index]);
    result.tools += asked[index] ? 1 : 0;
  }
  result.scores = backtest(members, result.exposure, wanted);
  const bool byDays = result.exposure == Exposure::Days;
  (byDays ? result.logScoreByDays : result.logScoreByTightenings) = result.scores.fleet.meanLogScore();
  if (byDays && !counted(members)) return result;
  const auto other = byDays ? Exposure::Tightenings : Exposure::Days;
  (byDays ? result.logScoreByTightenings : result.logScoreByDays) =
      backtest(members, other, wanted).fleet.meanLogScore();
  return result;
}

// One entry a tool: its series among those meant.
std::map<std::string, std::vector<std::size_t>> byTool(const FleetBook& book, const std::vector<bool>& meant) {
  std::map<std::string, std::vector<std::size_t>> tools;
  for (std::size_t i = 0; i < meant.size(); ++i) {
    if (meant[i]) tools[book.series()[i].tool->id].push_back(i);
  }
  return tools;
}

std::vector<int> toBeTried(const IntervalQuestion& question, const IntervalReport& report) {
  auto days = question.intervals;
  if (!question.andKept || days.empty()) return days;
  const int kept = report.recommendedDays.value_or(report.policyDays);
  constexpr double step = 1.5;  // close enough for a curve through them
  double between = step * *std::ranges::max_element(days);
  while (between < kept) {
    days.push_back(static_cast<int>(between));
    between *= step;
  }
  days.push_back(report.policyDays);
  days.push_back(kept);
  std::ranges::sort(days);
  const auto doubles = std::ranges::unique(days);
  days.erase(doubles.begin(), doubles.end());
  return days;
}

std::vector<ReviewedInterval> reviewed(const FleetBook& book, const std::vector<std::size_t>& series,
                                       const std::vector<PastChecks>& past, const IntervalQuestion& question,
                                       int policyDays, double confidence) {
  std::vector<ReviewedInterval> shortest;
  const auto keep = [&](ReviewedInterval one) {
    const auto same = std::ranges::find(shortest, one.method, &ReviewedInterval::method);
    if (same == shortest.end()) return shortest.push_back(std::move(one));
    if (one.intervalDays && (!same->intervalDays || *one.intervalDays < *same->intervalDays)) *same = std::move(one);
  };
  for (const std::size_t index : series) {
    const PastChecks& one = past[index];
    const auto& facts = book.series()[index];
    keep(staircase(one.checks, one.permittedPercent, policyDays));
    const auto own = evaluateDrift({.limitPercent = one.permittedPercent,
                                    .confidence = confidence,
                                    .asOf = question.asOf,
                                    .intervalDays = policyDays,
                                    .checks = one.checks});
    if (own) keep(controlChart(*own, one.checks.back().date));
    std::optional<double> perDay;
    const auto done = book.tighteningsUpTo(facts.tool->id, question.asOf);
    const auto days = (question.asOf - one.checks.front().date).count();
    if (done && days > 0) {
      perDay = (*done - book.tighteningsUpTo(facts.tool->id, one.checks.front().date).value_or(0)) /
               static_cast<double>(days);
    }
    keep(inUseTime(perDay, tighteningsPerInterval));
  }
  return shortest;
}

}  // namespace

Result<BacktestReport> backtestShop(const Shop& shop, const std::string& scope, Date asOf, const Progress& progress) {
  return guarded([&]() -> Result<BacktestReport> {
    const FleetBook& book = shop.inside().fleetBook(asOf);
    const auto meant = scopeOf(book, scope);
    if (std::ranges::find(meant, true) == meant.end()) return refuse(nothingMeant(scope, book));
    const auto past = pastOf(book, shop.inside().checks, asOf);
    BacktestReport report{.scope = scope.empty() ? "shop" : scope, .asOf = asOf, .groups = {}, .all = {}};
    for (std::size_t i = 0; i < book.groups().size(); ++i) {
      if (progress && !progress(static_cast<double>(i) / static_cast<double>(book.groups().size()))) {
        return refuse({.kind = ProblemKind::Cancelled});
      }
      const auto& group = book.groups()[i];
      std::vector<bool> asked(meant.size(), false);
      for (const std::size_t index : group.series) asked[index] = meant[index] && book.series()[index].group == i;
      if (std::ranges::find(asked, true) == asked.end()) continue;
      report.groups.push_back(scored(group, past, asked));
      report.all.add(report.groups.back().scores);
    }
    std::ranges::sort(report.groups, {}, &GroupBacktest::group);
    return report;
  });
}

Result<IntervalReport> analyseInterval(const Shop& shop, const IntervalQuestion& question) {
  Problems problems;
  if (!(question.target > 0 && question.target < 1)) {
    problems.push_back({.field = "target",
                        .found = writeNumber(100 * question.target),
                        .accepted = "a percentage above 0 and below 100, such as 95"});
  }
  for (const int days : question.intervals) {
    if (days >= 1 && days <= 7305) continue;
    problems.push_back({.field = "intervals", .found = std::to_string(days), .accepted = "1 to 7305 days"});
  }
  if (!problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<IntervalReport> {
    const FleetBook& book = shop.inside().fleetBook(question.asOf);
    const auto policy = shop.inside().policy();
    auto meant = scopeOf(book, question.scope);
    std::map<std::string, ToolStatus> status;
    for (const Tool& tool : shop.inside().tools.all()) status[tool.id] = tool.status;
    for (std::size_t i = 0; i < meant.size(); ++i) {
      const auto& id = book.series()[i].tool->id;
      if (id != question.scope && status[id] != ToolStatus::InService) meant[i] = false;
    }
    const auto tools = byTool(book, meant);
    if (tools.empty()) return refuse(nothingMeant(question.scope, book));
    const auto past = pastOf(book, shop.inside().checks, question.asOf);

    IntervalReport report;
    report.scope = question.scope.empty() ? "shop" : question.scope;
    report.asOf = question.asOf;
    report.target = question.target;
    report.policyDays = policy.intervalDays;
    std::vector<ToolPlaces> places;
    std::vector<std::vector<PastChecks>> visits;
    for (const auto& [id, series] : tools) {
      report.tools.push_back(id);
      ToolPlaces ofTool;
      auto& ownVisits = visits.emplace_back();
      for (const std::size_t index : series) {
        const auto& one = book.series()[index];
        const Fleet& fleet = book.groups()[one.group].fleet;
        ofTool.push_back({.fleet = &fleet, .member = one.place, .permittedPercent = past[index].permittedPercent});
        ownVisits.push_back(past[index]);
        if (fleet.isEstimated()) continue;
        report.assumed = true;
        report.assumption = assumptionText(fleet.permittedPercent());
      }
      places.push_back(std::move(ofTool));
    }
    if (tools.size() == 1) {
      const auto& only = *tools.begin();
      report.policyDays = book.series()[only.second.front()].tool->intervalDays.value_or(policy.intervalDays);
      report.methods = reviewed(book, only.second, past, question, report.policyDays, policy.confidence);
    }
    report.observed = observedReliability(visits, 0, 1e9, policy.confidence);
    report.observedAtPolicy =
        observedReliability(visits, 0.75 * report.policyDays, 1.25 * report.policyDays, policy.confidence);
    report.recommendedDays = longestInterval(places, question.target);
    report.risks = intervalRisks(places, toBeTried(question, report));
    return report;
  });
}

}  // namespace steadyturn
