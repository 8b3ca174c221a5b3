// Carries a shop's rows from one database into another, from a file to a server or back. Both are of this program's
// version, so a table has the same columns in both.
#pragma once

#include <functional>
#include <span>

#include "database.h"

namespace steadyturn {

// Copies every row, as it was at one moment, into a shop that has nothing in its ledger, in one transaction: all of
// it or nothing. `progress` is told 0 to 1 and stops it by returning false. What the search knows is made anew.
// Returns whether it was done. Throws StoreError. REQUIRES: an empty ledger in `into` (StoreError, Conflict).
bool copyShop(Database& from, Database& into, const std::function<bool(double)>& progress = {});

// The tables that are copied row by row, in an order in which every row finds what it refers to.
std::span<const char* const> copiedTables();

}  // namespace steadyturn
