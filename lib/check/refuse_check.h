// What is wrong with the input of a check.
#pragma once

#include "check.h"

namespace steadyturn {

// All of it at once, each named as the contract's JSON names the field; empty when the check can be evaluated.
Problems problemsOf(const CheckInput& check);

}  // namespace steadyturn
