// The program `sturn`: reads the command line, runs the chosen command, prints what came of it.
#pragma once

namespace steadyturn {

// Returns the exit status (exit_status.h).
int runProgram(int argc, char** argv);

}  // namespace steadyturn
