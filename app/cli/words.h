// The one place where the command line turns a Problem into words and into an exit status.
#pragma once

#include <string>

#include "problem.h"

namespace steadyturn {

// One line without the program's name: `points[0].target.unit: found "Nx"; accepted: N.m, cN.m, …`.
std::string words(const Problem& problem);

// The status the program ends with; the first problem decides. REQUIRES: not empty.
int exitStatusFor(const Problems& problems);

}  // namespace steadyturn
