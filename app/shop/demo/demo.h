// The demo shop: an invented municipal vehicle depot with six years of history, the same every time. No make, brand,
// person or part in it exists.
#pragma once

#include "demo_parts.h"
#include "inside.h"

namespace steadyturn {

// Fills an empty shop, event by event in the order of their days, in one transaction.
Result<void> fillDemo(Shop::Inside& shop, const Progress& progress);

}  // namespace steadyturn
