// Standard input and output, with their failures as problems.
#pragma once

#include <string>
#include <string_view>

#include "problem.h"

namespace steadyturn {

// Call once, first: descriptors 0 to 2 that came closed are filled, so that no database file lands on one of them and
// is written into as "output"; a reader that went away becomes an error of the write instead of a killed program.
void prepareStandardStreams();

// All of standard input. A problem when it is longer than 64 MiB or can't be read.
Result<std::string> readStandardInput();

// Writes and flushes. CannotCreate when it could not be written to its end (full disk, closed pipe).
Result<void> writeStandardOutput(std::string_view text);

// One line for a person, with the program's name before it.
void writeMessage(std::string_view line);

}  // namespace steadyturn
