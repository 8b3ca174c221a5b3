// A proven copy of a shop on another engine.
#pragma once

#include <string>

#include "shop.h"
#include "verification.h"

namespace steadyturn {

// Copies the shop, as it was at one moment, to `address`: a file that does not exist yet, or a server's database with
// no shop in it or one that nothing was entered in yet. The copy is opened, every record of it proven, and its ledger
// is the original's up to its own length; else it is taken away again. Throws StoreError. Problems: CannotCreate;
// Conflict (the original is damaged); Cancelled.
Result<Checkpoint> copyProven(const Shop& shop, const std::string& address, const Progress& progress = {});

}  // namespace steadyturn
