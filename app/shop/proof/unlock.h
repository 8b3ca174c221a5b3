// The key in force, opened with its passphrase.
#pragma once

#include <string>

#include "shop_signing.h"

namespace steadyturn {

struct Unlocked {
  SigningKey key;
  Seed seed;
};

// Problems: NotFound (no key), NotPermitted (the passphrase), Unavailable (a seal that is gone).
Result<Unlocked> unlock(const Shop& shop, const std::string& passphrase);

tl::unexpected<Problems> withoutKey();

// As typed on any keyboard: the same word is the same passphrase.
std::string normalisedPassphrase(std::string passphrase);

}  // namespace steadyturn
