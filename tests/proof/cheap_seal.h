// The least that Argon2id takes in libsodium: the tests ask for the same doors, not for their weight.
#pragma once

#include "key_seal.h"

namespace steadyturn {

inline const SealCost cheap{.passes = 1, .memory = 8192};

}  // namespace steadyturn
