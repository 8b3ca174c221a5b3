// Whether a reference standard is fit for a tool on a day.
#pragma once

#include "bench_record.h"
#include "shop_views.h"

namespace steadyturn {

// Past its own due date; expanded uncertainty at k = 2 above a quarter of the tool's permissible deviation (ISO
// 6789-1:2017); a known range that leaves out part of the tool's set-points. The gravest first; empty: fit.
std::vector<ReferenceDoubt> doubtsOf(const Reference& reference, const std::optional<ReferenceRange>& range,
                                     const Tool& tool, Date date);

}  // namespace steadyturn
