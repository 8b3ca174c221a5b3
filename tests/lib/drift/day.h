// A date as it is written in the tests.
#pragma once

#include <string_view>

#include "date.h"

namespace steadyturn {

inline Date day(std::string_view text) { return parseDate(text, "date").value(); }

}  // namespace steadyturn
