#include "setup_recording.h"

#include <fmt/format.h>

#include <algorithm>

#include "validate.h"

namespace steadyturn {

namespace {

// The readings of a run without its empty cells; none at all where nothing was typed.
TypedSeries withoutGaps(const TypedSeries& typed) {
  TypedSeries kept = typed;
  for (auto& readings : kept) std::erase(readings, std::string());
  const bool taken = std::ranges::any_of(kept, [](const auto& readings) { return !readings.empty(); });
  return taken ? kept : TypedSeries();
}

RunSeries parseSeries(Problems& problems, SetupRun run, const TypedSeries& typed, Unit unit) {
  RunSeries series;
  for (std::size_t i = 0; i < typed.size(); ++i) {
    auto& readings = series.emplace_back();
    for (std::size_t k = 0; k < typed[i].size(); ++k) {
      if (typed[i][k].empty()) continue;
      const auto value = parseTorqueNumber(typed[i][k], fmt::format("{}[{}][{}]", rulesFor(run).name, i, k));
      if (!value) append(problems, value.error());
      readings.push_back({value.value_or(1), unit});
    }
  }
  return series;
}

// A run's span: measured from its readings, or typed, or absent.
void takeSpan(Problems& problems, const BenchSetupDraft& draft, SetupRun run, BenchSetup& setup) {
  const auto& typed = draft.typedSpans[static_cast<std::size_t>(run)];
  const std::string name(rulesFor(run).name);
  if (!typed.empty() && setup.measured(run)) {
    problems.push_back({.field = name, .found = "readings and a typed span", .accepted = "one of them"});
  } else if (!typed.empty()) {
    const auto span = parseNumber(typed, name);
    if (!span) return append(problems, span.error());
    if (!(*span >= 0 && *span <= 100))
      return problems.push_back({.field = name, .found = typed, .accepted = "a span from 0 to 100 %"});
    spanOf(setup.spans, run) = *span;
  } else if (setup.measured(run)) {
    const auto before = problems.size();
    const auto series = parseSeries(problems, run, draft.readings[static_cast<std::size_t>(run)], draft.unit);
    if (problems.size() != before) return;
    const auto span = spanPercent(run, series);
    if (!span) return append(problems, span.error());
    spanOf(setup.spans, run) = *span;
  }
}

bool anyTyped(const BenchSetupDraft& draft) {
  return std::ranges::any_of(draft.typedSpans, [](const std::string& span) { return !span.empty(); });
}

}  // namespace

Result<BenchSetup> evaluateSetup(const BenchSetupDraft& draft, const Tool& tool) {
  Problems problems;
  BenchSetup setup{.model = modelOf(tool),
                   .date = draft.date,
                   .by = draft.by,
                   .reference = draft.reference,
                   .target = {0, draft.unit},
                   .readings = {},
                   .spans = {},
                   .basis = draft.basis,
                   .note = draft.note};
  checkText(problems, "by", draft.by);
  checkText(problems, "note", draft.note);
  checkText(problems, "basis", draft.basis);
  bool measured = false;
  for (const auto run : allSetupRuns) {
    const auto index = static_cast<std::size_t>(run);
    setup.readings[index] = withoutGaps(draft.readings[index]);
    takeSpan(problems, draft, run, setup);
    measured = measured || setup.measured(run);
  }
  const auto target = parseTorqueNumber(draft.target, "target");
  if (!target) append(problems, target.error());
  if (target && (*target == 0 || StatedTorque{*target, draft.unit}.in(tool.unit) > tool.maximum)) {
    problems.push_back({.field = "target",
                        .found = draft.target,
                        .accepted = "the tool's lowest set-point, above 0 and within its range"});
  }
  setup.target.value = target.value_or(0);
  if (measured && draft.reference.empty())
    problems.push_back({.field = "reference", .accepted = "the reference standard that the runs were read on"});
  if (anyTyped(draft) && draft.basis.empty())
    problems.push_back({.field = "basis", .accepted = "where the typed spans come from, in a few words"});
  if (!measured && !anyTyped(draft))
    problems.push_back({.field = "readings", .accepted = "the readings of at least one run, or a typed span"});
  if (!problems.empty()) return tl::unexpected(problems);
  return setup;
}

}  // namespace steadyturn
