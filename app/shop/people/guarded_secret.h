// A secret asked for: a PIN, or the shop's recovery code. Wrong tries are counted in the shop, and after a few the
// next one waits.
#pragma once

#include <string>

#include "inside.h"

namespace steadyturn {

// Of `account`, or of the shop's recovery code where that is empty. NotPermitted where it does not fit, or where it
// is too early to try again. Tries are kept except where the shop can't be written.
Result<void> askSecret(Shop::Inside& shop, const std::string& account, const std::string& typed);

}  // namespace steadyturn
