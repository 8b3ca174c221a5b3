// Colours of a chart, on a light and a dark ground. All are solid: translucent ones are not allowed in PDF/A-1b.
// Shape and line style carry the meaning; the hues (blue, orange, purple-red) stay apart for the common kinds of
// colour blindness.
#pragma once

#include <QColor>

#include "chart_model.h"

namespace steadyturn {

struct ChartTheme {
  QColor background, text, quietText, grid;
  QColor asFound, asLeft, fit, predictionFill, predictionEdge, limit, guard, adjustment, today;

  QColor colour(Role role) const;
};

const ChartTheme& lightTheme();
const ChartTheme& darkTheme();

}  // namespace steadyturn
