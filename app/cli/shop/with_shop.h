// Opens the shop that was named, with the Qt application that its work needs, and does the work.
#pragma once

#include "context.h"

namespace steadyturn {

// Problems: NotPermitted where the PIN does not fit.
Result<Output> withShop(const Caller& caller, const Context::Work& work, Face face);

// For work that makes a shop: the Qt application alone.
Result<Output> withQt(const Command& work);

}  // namespace steadyturn
