// A tool's history the size of a matchbox, for looking at many side by side: all on one scale of time, and each on
// the scale of its own limit, so that height means the same everywhere.
#pragma once

#include <QPainter>
#include <string>

#include "chart_theme.h"
#include "history_chart.h"

namespace steadyturn {

struct SmallScale {
  Date from{}, to{};  // from < to
};

// Wide enough for every point of `histories` and for the day they are drawn for.
SmallScale commonScale(const std::vector<const HistoryData*>& histories);

// Checks as found and as left by shape, both limits, the fitted drift with its band up to the day it is drawn for.
// What lies beyond 1.6 times the limit is drawn at the edge as an arrow. REQUIRES: a positive limit.
void paintSmallChart(QPainter& painter, const QRectF& place, const HistoryData& history, const SmallScale& scale,
                     const ChartTheme& theme);

}  // namespace steadyturn
