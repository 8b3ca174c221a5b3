// What the standards tabulate for ISO metric threads M3 … M39.
#pragma once

#include <array>
#include <optional>
#include <span>

#include "joint.h"

namespace steadyturn {

struct ThreadSize {
  double diameterMm;
  double coarsePitchMm;        // ISO 261:1998, table 2
  double stressAreaMm2;        // ISO 898-1:2013, nominal stress area, coarse
  double headMm;               // d_w min, hexagon head, ISO 4014:2011 product grade A or B
  double clearanceHoleMm;      // d_h, ISO 273:1979, medium series
  std::array<double, 5> fine;  // ISO 261:1998, finer pitches; 0 fills up
};

std::span<const ThreadSize> threadSizes();  // rising
const ThreadSize* findThreadSize(double diameterMm);

}  // namespace steadyturn
