// How the facts of a record differ from those that its ledger entry holds, in words.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

namespace steadyturn {

// "date is 2026-03-15, the entry says 2026-03-14; …": the first few differences, then how many more. Empty when there
// are none.
std::string differencesOf(const nlohmann::json& record, const nlohmann::json& entry);

}  // namespace steadyturn
