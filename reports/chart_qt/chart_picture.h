// A chart as a picture of its own, or painted into somebody else's.
#pragma once

#include <QIODevice>
#include <QPainter>
#include <QSize>

#include "chart_model.h"
#include "chart_theme.h"
#include "problem.h"

namespace steadyturn {

// All three lay the chart out at `size` (pixels) and REQUIRE a QApplication.
Result<void> writeChartSvg(const ChartModel& chart, const ChartTheme& theme, QSize size, QIODevice& out);
Result<void> writeChartPng(const ChartModel& chart, const ChartTheme& theme, QSize size, QIODevice& out);
// Scales it into `target`, which should have the proportions of `size`.
void paintChart(const ChartModel& chart, const ChartTheme& theme, QSize size, QPainter& painter,
                const QRectF& target);

}  // namespace steadyturn
