// A recorded check as a person reads it on a terminal.
#pragma once

#include <string>

#include "records.h"

namespace steadyturn {

std::string checkText(const Check& check);

}  // namespace steadyturn
