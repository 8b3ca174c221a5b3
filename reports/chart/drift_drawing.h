// The fitted drift as lines and bands, one of each for every segment between adjustments; where the fleet or an
// assumption speaks for the tool, what is expected by that, told apart by its strokes.
#pragma once

#include <vector>

#include "chart_model.h"
#include "history_chart.h"

namespace steadyturn {

struct DriftDrawing {
  std::vector<LineSeries> lines;
  std::vector<Band> bands;
};

// The newest segment is carried on to `until`. Empty where the checks are too few for a fit and nobody else speaks.
DriftDrawing drawDrift(const HistoryData& data, Date until);

}  // namespace steadyturn
