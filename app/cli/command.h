// What a command of the program is: work that gives text for standard output, or problems.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "problem.h"

namespace steadyturn {

struct Output {
  std::string text;                   // for standard output, with its last line break
  std::vector<std::string> cautions;  // for standard error, a line each
  int status = 0;                     // what the program ends with when the text was written
};

// Parsing the command line only chooses the command; it runs afterwards, once everything typed was understood.
using Command = std::function<Result<Output>()>;

}  // namespace steadyturn
