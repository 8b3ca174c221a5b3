// What a check leaves open against ISO 6789-1.
#pragma once

#include <vector>

#include "check.h"

namespace steadyturn {

// Too few readings, set-points that the standard asks for and nobody took, a reference too uncertain.
std::vector<Note> notesOn(const CheckInput& check, double limitPercent);

}  // namespace steadyturn
