// Widths of a table's columns.
#pragma once

#include <vector>

namespace steadyturn {

struct ColumnNeed {
  double least = 0;    // its widest word
  double natural = 0;  // its widest cell on one line
};

// Widths that fill `available`: natural ones and the rest shared out where all fit on one line; otherwise at least
// the widest word and a share of what is left; where not even that fits, in proportion to the widest words.
std::vector<double> columnWidths(const std::vector<ColumnNeed>& needs, double available);

}  // namespace steadyturn
