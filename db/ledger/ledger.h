// The ledger: every piece of evidence and every change of state is one entry, appended in the transaction of the row it proves.
// An entry is canonical JSON (RFC 8785) without floats: decimals as text, integers, ASCII keys, NFC text; it is stored and
// hashed as bytes, never re-serialised. leaf = SHA-256(0x00 ‖ entry) (RFC 6962, 2.1).
#pragma once

#include <cstdint>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "database.h"

namespace steadyturn {

// Facts of an entry: strings, integers, booleans, null, arrays and objects of these. Not a float among them.
using Facts = nlohmann::json;

struct EntryStamp {
  std::string at;   // UTC, "2026-03-14T09:26:53.589Z"; given by the caller, the store has no clock
  std::string who;  // the account, or "" in an open shop
};

class Ledger {
 public:
  explicit Ledger(Database& database);
  // Appends within the transaction at hand: {"at","facts","kind","seq","who"}. Returns its sequence, counted from 1 without gaps.
  std::int64_t append(const EntryStamp& stamp, std::string_view kind, Facts facts);
  std::int64_t size() const;

 private:
  // … prepared statements, the next sequence of this transaction
};

// RFC 8785 bytes of `facts`. REQUIRES: no float inside (it throws std::invalid_argument: a programming error).
std::string canonicalJson(const Facts& facts);

}  // namespace steadyturn
