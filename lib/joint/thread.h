// ISO metric screw threads: pitch, pitch diameter, minor diameter, stress area (ISO 261, ISO 724, ISO 898-1).
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "problem.h"

namespace steadyturn {

struct Thread {
  double diameterMm = 0;  // d
  double pitchMm = 0;     // P
  bool coarse = true;
};

// Reads "M8", "M14x1.5", "M14×1.5", "m 8". Coarse: ISO 261 M3 … M39; fine: a pitch finer than the coarse one, as
// ISO 261 lists it. Refuses what is not in the table, naming what is.
Result<Thread> parseThread(std::string_view typed, std::string_view field);
std::string writeThread(const Thread& thread);  // "M8", "M14x1.5"

double pitchDiameterMm(const Thread& thread);  // d2 = d − 0.649519 P (ISO 724)
double minorDiameterMm(const Thread& thread);  // d3 = d − 1.226869 P (ISO 724)
double stressAreaMm2(const Thread& thread);    // π/4 ((d2 + d3)/2)² (ISO 898-1, 9.1.6.1)
// The nominal stress area as ISO 898-1 tabulates it, for the coarse threads in its table.
std::optional<double> tabulatedStressAreaMm2(const Thread& thread);

}  // namespace steadyturn
