// The one place where the desktop turns problems into words.
#pragma once

#include <QString>

#include "problem.h"

namespace steadyturn {

// "Tool: “TW-99” is not known here." One sentence or two, the last says what to do.
QString wordProblem(const Problem& problem);
// The first three, then how many more there are.
QString wordProblems(const Problems& problems);

}  // namespace steadyturn
