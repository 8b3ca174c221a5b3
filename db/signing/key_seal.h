// A private key under a passphrase: libsodium's secretbox (XSalsa20-Poly1305) with a key that Argon2id (RFC 9106)
// makes of the passphrase.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "ed25519.h"
#include "problem.h"

namespace steadyturn {

// What opening a seal costs whoever tries.
struct SealCost {
  std::uint64_t passes = 3;
  std::uint64_t memory = std::uint64_t{256} << 20;  // bytes; libsodium calls this pair "moderate"
};

struct KeySeal {
  std::string salt;   // 16 bytes
  SealCost cost;      // that it was made with
  std::string nonce;  // 24 bytes
  std::string box;    // 48 bytes: the seed and its authenticator
};

// Problems: Unavailable (not that much memory).
Result<KeySeal> sealSeed(const Seed& seed, std::string_view passphrase, const SealCost& cost = {});
// Problems: NotPermitted (another passphrase, or a seal that was changed), Unavailable.
Result<Seed> openSeal(const KeySeal& seal, std::string_view passphrase);

}  // namespace steadyturn
