// What an auditor asks of a shop: that no record was changed, removed or slipped in; a copy that is whole; and the
// hashes with which anybody can prove that a certificate's check stands in the ledger.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "shop.h"
#include "verification.h"

namespace steadyturn {

// Holds every record, as its table shows it, against its ledger entry, and recomputes every check from its readings.
// With a checkpoint, today's ledger must also go on from it: that finds a tail cut off and an older copy put back.
// With a public key (64 hexadecimal digits), that key must have signed it, and every later one been signed by the one
// before: that finds a ledger that was written anew under another key.
// Faults are data, not problems. Problems: Unavailable (the shop can't be read), Cancelled, BadInput (field "key").
Result<Verification> verifyShop(const Shop& shop, const std::optional<Checkpoint>& checkpoint = {},
                                const Progress& progress = {}, const std::string& trustedKey = {});

// The ledger's head as it is now, for a certificate or a note kept outside the shop.
Result<Checkpoint> ledgerHead(const Shop& shop);

// Copies the shop, as it is at one moment, to a file that must not exist yet. The copy is opened again and held
// against the original before it gets its name; returns the head of its ledger. Problems: CannotCreate, Unavailable.
Result<Checkpoint> backupShop(const Shop& shop, const std::string& path);

// Leads from one entry of the ledger to the head of the whole: hash the entry's bytes, then fold in `path`
// (RFC 9162, 2.1.3.2).
struct EntryProof {
  std::int64_t sequence = 0;      // of the entry, from 1; its leaf has index sequence − 1
  std::string leaf;               // hex
  Checkpoint head;                // tree size and root
  std::vector<std::string> path;  // hex, from the leaf up
};
// Of the entry that recorded a check, to the ledger's head or to what its head was at `size` entries. Problems:
// NotFound (no such check, or not yet there at that size), Unavailable.
Result<EntryProof> proveCheck(const Shop& shop, std::int64_t check, std::optional<std::uint64_t> size = {});

// The bytes of each entry of the ledger, oldest first, as they are hashed; `see` ends the walk by false. Nothing in
// them is a line break, so that a file with one entry a line can be proven with nothing but SHA-256.
Result<void> walkLedger(const Shop& shop, const std::function<bool(std::string_view entry)>& see);

}  // namespace steadyturn
