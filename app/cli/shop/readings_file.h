// The readings of one check from a CSV file with the columns target, reading and unit.
#pragma once

#include <string>
#include <vector>

#include "shop_views.h"

namespace steadyturn {

struct TypedReadings {
  Unit unit = Unit::NewtonMetre;
  std::vector<DraftPoint> points;  // in the order of the file
};

// Every problem names its line and column. One check has one unit: rows in another one are refused.
Result<TypedReadings> readReadings(const std::string& path, bool decimalComma);

}  // namespace steadyturn
