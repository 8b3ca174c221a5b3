// What the shop's fleets are asked beside a tool's drift: were earlier predictions right, and how long may the
// checking interval be?
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "backtest.h"
#include "interval_risk.h"
#include "observed_reliability.h"
#include "review_methods.h"
#include "shop.h"

namespace steadyturn {

// Tools that a person says are alike, whatever their makers and maxima: the name that they share. Empty: as the
// program groups them (app/shop/rules/fleet_book.h). Problems: NotFound, NotPermitted, an unfit name, Unavailable.
Result<void> nameToolGroup(Shop& shop, const std::string& tool, const std::string& name);
// By tool; tools without such a name are absent.
Result<std::map<std::string, std::string>> toolGroups(const Shop& shop);

struct GroupBacktest {
  std::string group;                   // "maker B, type II class A, up to 100 N·m, above 80 % of the maximum"
  Exposure exposure = Exposure::Days;  // by which it was scored: the one the group goes by today
  std::size_t tools = 0;               // that were scored
  BacktestScores scores;
  std::optional<double> logScoreByDays, logScoreByTightenings;  // the latter where tightenings are on record
};

struct BacktestReport {
  std::string scope;  // a tool's mark, a group's words, or "shop"
  Date asOf{};
  std::vector<GroupBacktest> groups;  // that were scored, by name
  BacktestScores all;
};

// `scope`: a tool's mark, words of a group's name, or "" for the whole shop. Checks after asOf are left out.
// Problems: NotFound, Cancelled, Unavailable.
Result<BacktestReport> backtestShop(const Shop& shop, const std::string& scope, Date asOf,
                                    const Progress& progress = {});

struct IntervalQuestion {
  std::string scope;  // as for backtestShop; held and retired tools are left out of a group
  Date asOf{};
  double target = 0.95;  // probability of being inside at the end of the interval; above 0, below 1
  std::vector<int> intervals{30, 61, 91, 122, 183, 274, 365, 548, 730};  // days, to be tried
  bool andKept = false;  // and the present one, and the way up to the one that keeps the target
};

struct IntervalReport {
  std::string scope;
  Date asOf{};
  double target = 0.95;
  std::vector<std::string> tools;
  int policyDays = 0;                     // the tool's own interval, or the shop's
  ObservedReliability observed;           // at the end of whatever interval there was
  ObservedReliability observedAtPolicy;   // after 75 % to 125 % of the present interval
  std::vector<ReviewedInterval> methods;  // of one tool; empty for a group
  std::optional<int> recommendedDays;     // by the fleet; absent: not even a day keeps the target
  bool assumed = false;                   // some fleet has no record yet
  std::string assumption;
  std::vector<IntervalRisk> risks;
};

Result<IntervalReport> analyseInterval(const Shop& shop, const IntervalQuestion& question);

}  // namespace steadyturn
