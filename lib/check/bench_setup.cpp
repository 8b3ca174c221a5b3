#include "bench_setup.h"

#include <fmt/core.h>

#include <algorithm>

#include "budget.h"

namespace steadyturn {
namespace {

// ISO 6789-2:2017, from memory (the text was not at hand).
constexpr std::array<RunRules, allSetupRuns.size()> rules{{
    {"reproducibility", {4, 4}, 5, "Take the tool off and put it back between the series."},
    {"drive", {4, 6}, 10, "Turn the tool's output drive to its next position: four of a square, six of a hexagon."},
    {"interface",
     {4, 6},
     10,
     "Turn the adapter in the reference to its next position: four of a square, six of a hexagon."},
    {"loading_point",
     {2, 2},
     10,
     "Pull with the hand's middle 10 mm nearer to the drive than marked, then 10 mm farther."},
}};

Problems problemsOf(const RunRules& rule, const RunSeries& series) {
  Problems problems;
  const auto [first, second] = rule.series;
  if (series.size() != first && series.size() != second) {
    problems.push_back(
        {.field = std::string(rule.name),
         .found = fmt::format("{} series", series.size()),
         .accepted = first == second ? fmt::format("{} series of {} readings", first, rule.readings)
                                     : fmt::format("{} or {} series of {} readings", first, second, rule.readings)});
  }
  for (std::size_t i = 0; i < series.size(); ++i) {
    if (series[i].size() != rule.readings) {
      problems.push_back({.field = fmt::format("{}[{}]", rule.name, i),
                          .found = fmt::format("{} readings", series[i].size()),
                          .accepted = fmt::format("{} readings", rule.readings)});
    }
    for (std::size_t k = 0; k < series[i].size(); ++k) {
      if (series[i][k].value > 0) continue;
      problems.push_back({.field = fmt::format("{}[{}][{}]", rule.name, i, k),
                          .found = writeNumber(series[i][k].value),
                          .accepted = "a torque above 0"});
    }
  }
  return problems;
}

double meanOf(const std::vector<StatedTorque>& readings, Unit unit) {
  std::vector<double> values;
  for (const auto& reading : readings) values.push_back(reading.in(unit));
  return mean(values);
}

template <typename Spans>
auto& memberOf(Spans& spans, SetupRun run) {
  switch (run) {
    case SetupRun::Reproducibility:
      return spans.reproducibility;
    case SetupRun::Drive:
      return spans.drive;
    case SetupRun::Interface:
      return spans.interface;
    case SetupRun::LoadingPoint:
      break;
  }
  return spans.loadingPoint;
}

}  // namespace

const RunRules& rulesFor(SetupRun run) { return rules[static_cast<std::size_t>(run)]; }

Result<double> spanPercent(SetupRun run, const RunSeries& series) {
  if (auto problems = problemsOf(rulesFor(run), series); !problems.empty())
    return tl::unexpected(std::move(problems));
  std::vector<double> means;
  for (const auto& readings : series) means.push_back(meanOf(readings, series.front().front().unit));
  const auto [smallest, largest] = std::ranges::minmax(means);
  return (largest - smallest) / mean(means) * 100;
}

std::optional<double>& spanOf(VariationSpans& spans, SetupRun run) { return memberOf(spans, run); }
const std::optional<double>& spanOf(const VariationSpans& spans, SetupRun run) { return memberOf(spans, run); }

}  // namespace steadyturn
