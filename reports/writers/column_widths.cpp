#include "column_widths.h"

namespace steadyturn {

std::vector<double> columnWidths(const std::vector<ColumnNeed>& needs, double available) {
  double least = 0, natural = 0;
  for (const auto& need : needs) {
    least += need.least;
    natural += need.natural;
  }
  std::vector<double> widths;
  widths.reserve(needs.size());
  for (const auto& need : needs) {
    if (natural <= available) {
      widths.push_back(need.natural + (available - natural) / static_cast<double>(needs.size()));
    } else if (least <= available) {
      // natural > least here, or the first branch would have been taken.
      widths.push_back(need.least + (available - least) * (need.natural - need.least) / (natural - least));
    } else {
      widths.push_back(need.least / least * available);
    }
  }
  return widths;
}

}  // namespace steadyturn
