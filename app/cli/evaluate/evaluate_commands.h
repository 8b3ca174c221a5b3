// The stateless calculations: `sturn convert` and `sturn evaluate check|drift|fleet|delivery|joint`.
#pragma once

#include <CLI/App.hpp>

#include "command.h"

namespace steadyturn {

// Adds both commands to `app`; parsing one of them puts its work into `chosen`, which must outlive the parsing.
void addEvaluateCommands(CLI::App& app, Command& chosen);
void addConvertCommand(CLI::App& app, Command& chosen);

}  // namespace steadyturn
