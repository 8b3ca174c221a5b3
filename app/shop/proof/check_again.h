// Evaluates a stored check anew from its readings.
#pragma once

#include <string>

#include "records.h"

namespace steadyturn {

// How the stored evaluation differs from what the readings give; empty where it does not. Figures may differ by the
// rounding of another compiler (10⁻⁹), verdicts not at all.
std::string differenceOnCheckingAgain(const Check& check, const Tool& tool);

}  // namespace steadyturn
