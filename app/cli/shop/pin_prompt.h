// A PIN or a code, from where it is not seen: the environment, a prompt without echo, or a line of standard input.
#pragma once

#include <optional>
#include <string>

namespace steadyturn {

// From the environment variable; else asked for on the terminal (on standard error, the typed signs not shown); else
// the next line of standard input. Nothing where that has ended.
std::optional<std::string> askPin(const std::string& question, const char* variable);

// The same, and on a terminal asked for twice till both are the same.
std::optional<std::string> askNewPin(const std::string& question, const char* variable);

}  // namespace steadyturn
