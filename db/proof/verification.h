// What a proof says of a shop. Plain values.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "merkle.h"
#include "problem.h"

namespace steadyturn {

// The head of a ledger at some moment, as an old certificate or a note outside the shop has it.
struct Checkpoint {
  std::uint64_t size = 0;  // entries
  Hash root{};
};
// Reads and writes "SIZE:ROOT", the root as 64 hexadecimal digits. Problems name `field`.
Result<Checkpoint> parseCheckpoint(std::string_view typed, std::string_view field);
std::string writeCheckpoint(const Checkpoint& checkpoint);

struct Fault {
  std::int64_t entry = 0;  // the ledger's entry it is about; 0 for what belongs to none
  std::string what;        // the record and how it differs
};

// How far signatures reach: what came later is vouched for by whoever has a copy of its checkpoint, and by nobody
// else.
struct LastSigned {
  std::uint64_t size = 0;  // entries, from the first
  std::string at;          // UTC
  std::string key, publicKey, holder;
};

struct Verification {
  std::int64_t entries = 0;
  std::string head;             // root of the ledger at `entries`, hex
  std::int64_t signatures = 0;  // that are good
  std::optional<LastSigned> lastSigned;
  std::vector<std::string> notes;  // no faults, but to be known: a key that was lost
  std::vector<Fault> faults;       // as found along the ledger, the first `mostFaults`
  std::int64_t unlisted = 0;       // faults beyond those

  bool intact() const { return faults.empty(); }
};
inline constexpr std::size_t mostFaults = 1000;

}  // namespace steadyturn
