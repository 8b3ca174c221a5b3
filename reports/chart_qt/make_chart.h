// A Qt chart of a chart model, for a window, SVG, PNG and PDF alike.
#pragma once

#include <QtCharts/QChart>
#include <memory>
#include <optional>

#include "axis_ticks.h"
#include "chart_model.h"
#include "chart_theme.h"

namespace steadyturn {

// Shows the whole model, or the window of it. The chart thins its points to the pixels at hand whenever its size
// changes. REQUIRES: a QApplication; model not null.
std::unique_ptr<QChart> makeChart(std::shared_ptr<const ChartModel> model, const ChartTheme& theme = lightTheme(),
                                  const std::optional<ChartWindow>& window = {});
ChartWindow wholeWindow(const ChartModel& model);

}  // namespace steadyturn
