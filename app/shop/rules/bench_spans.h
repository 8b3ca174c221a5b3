// Which set-ups stand behind a check's spans.
#pragma once

#include <vector>

#include "bench_record.h"

namespace steadyturn {

// Each span from the newest set-up that has it, of those dated on or before `date`: a later one was not known then.
// REQUIRES: setups of one model, the newest first.
VariationSpans spansOn(const std::vector<BenchSetup>& setups, Date date);

// The set-up that a stored span came from: the newest on or before `date` with this very figure. Null when none has
// it.
const BenchSetup* setupBehind(const std::vector<BenchSetup>& setups, SetupRun run, double span, Date date);

// "measured at this bench, 2026-02-03 (set-up 4)", or "typed 2026-02-03: maker's data sheet (set-up 4)".
std::string originInWords(const BenchSetup& setup, SetupRun run);

}  // namespace steadyturn
