// A Qt chart of a chart model, for a window, SVG, PNG and PDF alike.
#pragma once

#include <QtCharts/QChart>
#include <memory>

#include "chart_model.h"
#include "chart_theme.h"

namespace steadyturn {

// The chart thins its points to the pixels at hand whenever its size changes, and tells a point's note as a tool tip.
// REQUIRES: a QApplication; model not null.
std::unique_ptr<QChart> makeChart(std::shared_ptr<const ChartModel> model, const ChartTheme& theme = lightTheme());

}  // namespace steadyturn
