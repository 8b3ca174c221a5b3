// The bench set-up of a tool model: the runs that yield the spans of the uncertainty budget (ISO 6789-2:2017, from
// memory). Taken once for a model at its lowest set-point, and reused by every check of a tool of that model.
#pragma once

#include <array>
#include <string_view>
#include <vector>

#include "check.h"

namespace steadyturn {

enum class SetupRun { Reproducibility, Drive, Interface, LoadingPoint };
inline constexpr std::array allSetupRuns{SetupRun::Reproducibility, SetupRun::Drive, SetupRun::Interface,
                                         SetupRun::LoadingPoint};

// What the standard asks of a run. One table holds all of it.
struct RunRules {
  std::string_view name;              // as the budget names its source: "reproducibility", "drive", "interface" …
  std::array<std::size_t, 2> series;  // how many series; the second choice (hexagon) may equal the first
  std::size_t readings;               // in each series
  std::string_view how;               // what to do between the series, in words
};
const RunRules& rulesFor(SetupRun run);

using RunSeries = std::vector<std::vector<StatedTorque>>;  // readings of the reference, each > 0

// Span b = largest − smallest mean of the series, in % of the mean of all series' means (the reference value).
// Problems name "drive" (number of series), "drive[1]" (number of readings) and "drive[1][4]" (a reading of 0).
Result<double> spanPercent(SetupRun run, const RunSeries& series);

// The member of `spans` that a run yields.
std::optional<double>& spanOf(VariationSpans& spans, SetupRun run);
const std::optional<double>& spanOf(const VariationSpans& spans, SetupRun run);

}  // namespace steadyturn
