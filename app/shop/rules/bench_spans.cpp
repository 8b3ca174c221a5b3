#include "bench_spans.h"

#include <fmt/format.h>

#include <algorithm>

namespace steadyturn {

VariationSpans spansOn(const std::vector<BenchSetup>& setups, Date date) {
  VariationSpans spans;
  for (const auto run : allSetupRuns) {
    const auto newest = std::ranges::find_if(
        setups, [&](const BenchSetup& setup) { return setup.date <= date && spanOf(setup.spans, run).has_value(); });
    if (newest != setups.end()) spanOf(spans, run) = spanOf(newest->spans, run);
  }
  return spans;
}

const BenchSetup* setupBehind(const std::vector<BenchSetup>& setups, SetupRun run, double span, Date date) {
  const auto found = std::ranges::find_if(
      setups, [&](const BenchSetup& setup) { return setup.date <= date && spanOf(setup.spans, run) == span; });
  return found == setups.end() ? nullptr : &*found;
}

std::string originInWords(const BenchSetup& setup, SetupRun run) {
  const auto day = writeDate(setup.date);
  return setup.measured(run) ? fmt::format("measured at this bench, {} (set-up {})", day, setup.id)
                             : fmt::format("typed {}: {} (set-up {})", day, setup.basis, setup.id);
}

}  // namespace steadyturn
