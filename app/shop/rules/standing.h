// Where a tool stands on a day, from its status, its newest check and its drift.
#pragma once

#include <vector>

#include "fleet_book.h"
#include "shop_views.h"

namespace steadyturn {

// A tool due within this many days is "due soon" (common practice: a month's notice).
inline constexpr int dueSoonDays = 30;

// Groups one tool's summaries by set-point and evaluates each as of a day; checks after that day are left out.
// REQUIRES: the book was gathered as of the same day and holds the tool's checks.
ToolDrift driftOf(const Tool& tool, const std::vector<PointSummary>& summaries, const FleetBook& book, Date asOf,
                  const Policy& policy);

// The newest check's verdict, the worst of its set-points; of a tool checked both ways, the worse of the newest in
// each direction. Fail when there is none. REQUIRES: summaries in the store's order (date, as found before as left,
// id).
Verdict newestVerdict(const std::vector<PointSummary>& summaries);

ToolOverview overviewOf(const ToolDrift& drift, const std::vector<PointSummary>& summaries, Date asOf);

}  // namespace steadyturn
