// Where the axes of a chart begin and end, and where they are marked.
#pragma once

#include <string>
#include <vector>

#include "chart_model.h"

namespace steadyturn {

struct Tick {
  double at = 0;
  std::string label;
};

struct AxisRange {
  double low = 0, high = 0;  // low < high
};

// The part of a chart that is looked at.
struct ChartWindow {
  AxisRange across, values;
};

// Days since 1970-01-01, where a chart goes by the calendar.
double axisPlace(Date date);

// All the chart shows, with a little room on both sides.
AxisRange acrossRange(const ChartModel& chart);
// All values: points with their bars, lines, both limits, with room above for the labels of vertical lines. A band
// that opens far beyond everything else is cut, so that it does not press the rest flat.
AxisRange valueRange(const ChartModel& chart);

// Years, quarters, months, weeks or days, by the span; at most `most` ticks. "2024", "2024-04", "2024-04-15".
std::vector<Tick> dateTicks(AxisRange range, int most);
// Round steps (1, 2 or 5 × a power of ten), with signs: "+2", "0", "−2".
std::vector<Tick> valueTicks(AxisRange range, int most);
// Whole round steps from 0 on, without signs.
std::vector<Tick> countTicks(AxisRange range, int most);

}  // namespace steadyturn
