// The key in force, opened with its passphrase.
#pragma once

#include <string>

#include "shop_signing.h"
#include "verification.h"

namespace steadyturn {

struct Unlocked {
  SigningKey key;
  Seed seed;
};

// Problems: NotFound (no key), NotPermitted (the passphrase), Unavailable (a seal that is gone).
Result<Unlocked> unlock(const Shop& shop, const std::string& passphrase);

tl::unexpected<Problems> withoutKey();

// The head to be signed: from every leaf, as a signature on a wrong root could never be taken back. Problems:
// Unavailable where the ledger's inner hashes tell another one.
Result<Checkpoint> headToSign(const Shop& shop);

// As typed on any keyboard: the same word is the same passphrase.
std::string normalisedPassphrase(std::string passphrase);

}  // namespace steadyturn
