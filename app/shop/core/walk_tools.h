// Every tool with its own share of the shop's set-point summaries, in one pass.
#pragma once

#include <algorithm>
#include <vector>

#include "shop.h"

namespace steadyturn {

// Calls see(tool, summaries). REQUIRES: both lists in byte order of the tool's mark. False: `progress` stopped it.
template <typename See>
bool walkTools(const std::vector<Tool>& tools, const std::vector<PointSummary>& all, const Progress& progress,
               const See& see) {
  auto next = all.begin();
  std::size_t seen = 0;
  for (const auto& tool : tools) {
    next = std::find_if(next, all.end(), [&](const PointSummary& point) { return point.tool >= tool.id; });
    const auto end = std::find_if(next, all.end(), [&](const PointSummary& point) { return point.tool != tool.id; });
    see(tool, std::vector<PointSummary>(next, end));
    next = end;
    if (progress && !progress(static_cast<double>(++seen) / static_cast<double>(tools.size()))) return false;
  }
  return true;
}

}  // namespace steadyturn
