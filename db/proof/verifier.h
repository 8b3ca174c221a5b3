// Proves a shop from the tables people read. Every ledger entry is hashed again from its stored bytes; its sequence,
// instant, account and kind must agree with the columns beside it; and the facts of every record, made anew from its
// row, must be those of its entry, byte for byte. A record that differs, is missing or has no entry is a fault that
// names it. One pass along the ledger, with one look-ahead row for each kind of record.
//
// Signed checkpoints and keys are held against the tree of the entries before them.
//
// What it can't tell: whether the whole shop, records and ledger alike, was replaced by an older copy, or written
// anew with another key or none, or anew from the last signature on. What is kept outside can: a checkpoint, with
// which the ledger of today must begin, and a public key, under which it must be signed.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "proven_rows.h"
#include "verification.h"

namespace steadyturn {

// What is known of the ledger from outside the shop.
struct Witness {
  std::optional<Checkpoint> checkpoint;
  std::string key;  // a public key in hexadecimal digits, or ""
};

// `progress` is told 0 … 1 and cancels by false (a problem of kind Cancelled). Throws StoreError where the engine
// can't read the shop. REQUIRES: one ProvenRows for each kind of entry; a Snapshot, if others may be writing.
Result<Verification> verifyLedger(Database& database, std::vector<ProvenRows> records, const Witness& witness,
                                  const std::function<bool(double)>& progress);

// The root of the first `size` stored leaves, or of all; each is read.
Checkpoint headOf(Database& database, std::optional<std::uint64_t> size = {});

}  // namespace steadyturn
