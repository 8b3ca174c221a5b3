// Passphrases on the command line: from the environment, where a script has them, or typed at the terminal unseen.
#pragma once

#include <string>

#include "problem.h"

namespace steadyturn {

inline constexpr const char* passphraseVariable = "STURN_PASSPHRASE";
inline constexpr const char* newPassphraseVariable = "STURN_NEW_PASSPHRASE";

// Problems (BadInput, "passphrase"): neither a variable nor a terminal.
Result<std::string> askPassphrase(const char* variable, const std::string& prompt);
// The same, typed twice.
Result<std::string> askNewPassphrase(const char* variable, const std::string& prompt);

}  // namespace steadyturn
