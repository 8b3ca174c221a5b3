#include "evaluate_fleet.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

#include "fleet_assumption.h"
#include "student_t.h"

namespace steadyturn {

namespace {

constexpr double mostTightenings = 1e9;

DriftInput ownInput(const FleetInput& input, const FleetToolInput& tool) {
  DriftInput own{.limitPercent = input.limitPercent,
                 .confidence = input.confidence,
                 .asOf = input.asOf,
                 .intervalDays = input.intervalDays,
                 .checks = {}};
  for (const FleetCheck& check : tool.checks) own.checks.push_back(check.found);
  return own;
}

// A count that goes on from the checks' counts; `least` is the greatest so far.
void requireCount(Problems& problems, const std::string& field, double count, double least) {
  if (count >= least && count <= mostTightenings) return;
  problems.push_back({.field = field,
                      .found = fmt::format("{}", count),
                      .accepted = fmt::format("a number from {} (counts never fall) to 1e9", least)});
}

void checkCounts(Problems& problems, const FleetToolInput& tool, const std::string& path) {
  double least = 0;
  for (std::size_t i = 0; i < tool.checks.size(); ++i) {
    if (!tool.checks[i].tightenings) continue;
    requireCount(problems, fmt::format("{}.checks[{}].tightenings", path, i), *tool.checks[i].tightenings, least);
    least = std::max(least, *tool.checks[i].tightenings);
  }
  if (tool.tightenings) requireCount(problems, path + ".tightenings", *tool.tightenings, least);
}

// Names fields of one tool's drift within the fleet's document; what is common to all is named once.
void adoptProblems(Problems& problems, const Problems& ofTool, const std::string& path) {
  for (Problem problem : ofTool) {
    if (problem.field.starts_with("checks")) problem.field = path + "." + problem.field;
    if (std::ranges::find(problems, problem) == problems.end()) problems.push_back(problem);
  }
}

bool earlierInTime(const FleetCheck& a, const FleetCheck& b) {
  return std::tie(a.found.date, a.found.phase) < std::tie(b.found.date, b.found.phase);
}

FleetMember memberOf(const FleetToolInput& tool, Date asOf) {
  FleetMember member;
  for (const FleetCheck& check : tool.checks) member.add(check.found, check.tightenings);
  if (tool.tightenings && asOf >= member.last()) member.countUpTo(asOf, *tool.tightenings);
  return member;
}

bool counted(const FleetInput& input) {
  return std::ranges::all_of(input.tools, [](const FleetToolInput& tool) {
    return std::ranges::all_of(tool.checks, [](const FleetCheck& check) { return check.tightenings.has_value(); });
  });
}

FleetToolResult resultFor(const Fleet& fleet, std::size_t index, const FleetInput& input, const DriftResult& own) {
  constexpr int horizonDays = 7305;  // 20 years of 365.25 days
  const Date dueByPolicy = fleet.member(index).last() + std::chrono::days(input.intervalDays);
  const auto crossing = fleet.crossing(index, input.asOf, input.limitPercent, horizonDays);
  return {.tool = input.tools[index].tool,
          .outlook = fleet.outlook(index, input.asOf),
          .probabilityWithin = fleet.probabilityWithin(index, input.asOf, input.limitPercent),
          .crossingDate = crossing,
          .dueDate = std::min(dueByPolicy, crossing.value_or(dueByPolicy)),
          .own = own};
}

}  // namespace

Result<FleetResult> evaluateFleet(const FleetInput& typed) {
  FleetInput input = typed;
  Problems problems;
  std::vector<DriftResult> own;
  std::set<std::string> names;
  if (input.tools.empty()) problems.push_back({.field = "tools", .found = "none", .accepted = "at least one tool"});
  for (std::size_t i = 0; i < input.tools.size(); ++i) {
    FleetToolInput& tool = input.tools[i];
    const std::string path = fmt::format("tools[{}]", i);
    if (tool.tool.empty() || !names.insert(tool.tool).second) {
      problems.push_back({.field = path + ".tool", .found = tool.tool, .accepted = "a name that no other tool has"});
    }
    if (auto drift = evaluateDrift(ownInput(input, tool))) {
      own.push_back(*std::move(drift));
    } else {
      adoptProblems(problems, drift.error(), path);
    }
    std::ranges::stable_sort(tool.checks, earlierInTime);
    checkCounts(problems, tool, path);
  }
  if (input.exposure == Exposure::Tightenings && !counted(input)) {
    problems.push_back(
        {.field = "exposure", .found = "tightenings", .accepted = "days, while a check has no tightenings"});
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));

  std::vector<FleetMember> members;
  for (const FleetToolInput& tool : input.tools) members.push_back(memberOf(tool, input.asOf));
  FleetResult result{.fleet = Fleet(members, input.limitPercent, input.confidence, input.exposure),
                     .assumption = {},
                     .groupSlopeInterval = {},
                     .tools = {}};
  const Fleet& fleet = result.fleet;
  if (!fleet.isEstimated()) result.assumption = assumptionText(input.limitPercent);
  const auto group = fleet.model().groupSlopeAdjusted();
  const double reach = studentQuantile(input.confidence, group.degreesOfFreedom) * group.standardError;
  result.groupSlopeInterval = {.low = group.slope - reach, .high = group.slope + reach};
  for (std::size_t i = 0; i < input.tools.size(); ++i) {
    result.tools.push_back(resultFor(fleet, i, input, own[i]));
  }
  return result;
}

}  // namespace steadyturn
