// What the ledger says about a check: everything that was read and everything that was made of it.
#pragma once

#include "ledger.h"
#include "records.h"

namespace steadyturn {

Facts checkFacts(const Check& check, std::int64_t id);

// Readings as typed, as a JSON array of texts, and back (StoreError where that is damaged).
std::string writeReadings(const std::vector<std::string>& readings);
std::vector<std::string> parseReadings(const std::string& json);

}  // namespace steadyturn
