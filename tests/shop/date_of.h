// A date from its three numbers.
#pragma once

#include "date.h"

namespace steadyturn {

constexpr Date day(int y, unsigned m, unsigned d) {
  return std::chrono::sys_days(std::chrono::year(y) / std::chrono::month(m) / std::chrono::day(d));
}

}  // namespace steadyturn
