// From a typed bench set-up to the record that is stored.
#pragma once

#include "bench_record.h"
#include "shop_views.h"

namespace steadyturn {

// Parses the readings and computes the spans. Refuses: a run with other than the series and readings that ISO 6789-2
// asks for, a span both measured and typed, a typed one without its basis, a measured one without a reference,
// nothing at all. Problems name "target", "reference", "basis", "drive[1][4]" …
Result<BenchSetup> evaluateSetup(const BenchSetupDraft& draft, const Tool& tool);

}  // namespace steadyturn
