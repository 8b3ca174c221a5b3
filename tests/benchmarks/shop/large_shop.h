// A shop of any size for benchmarks, filled through the import that people use.
#pragma once

#include <string>

#include "shop.h"

namespace steadyturn {

// `tools` wrenches ("TW-0001" …), each with `checksEach` monthly checks of three set-points with five readings, and
// one fastener "F-1" of 60 N·m. Throws std::runtime_error when the shop refuses.
Shop makeLargeShop(const std::string& folder, const std::string& name, int tools, int checksEach);

}  // namespace steadyturn
