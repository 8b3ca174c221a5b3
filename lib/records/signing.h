// The shop's signing keys and what they signed. Plain values; hashes, keys and signatures in hexadecimal digits,
// lower case. What exactly is signed stands in db/signing/signed_statement.h.
#pragma once

#include <cstdint>
#include <string>

namespace steadyturn {

// An Ed25519 key (RFC 8032) that vouches for the ledger from the entry that tells of it to the one that replaces it.
struct SigningKey {
  std::string id;            // the first 16 digits of SHA-256 over the public key's 32 bytes
  std::string publicKey;     // 64 digits
  std::string holder;        // who has the passphrase
  std::string made;          // UTC, "2026-03-14T09:26:53.589Z"
  std::string replaces;      // id of the key before; "" for the first
  std::string lostReason;    // why the key before could not sign any more; "" where it did
  std::uint64_t size = 0;    // entries of the ledger before the one that tells of this key
  std::string root;          // their Merkle root
  std::string signature;     // by this key, 128 digits
  std::string oldSignature;  // of the same statement by the key before; "" for the first and after a loss
};

// The head of the ledger at a moment, vouched for by a key. Its own entry comes after the entries that it counts.
struct SignedCheckpoint {
  std::uint64_t size = 0;  // entries
  std::string root;
  std::string at;  // UTC
  std::string key;
  std::string occasion;   // "day closed", "certificate C-42"
  std::string signature;  // 128 digits
};

}  // namespace steadyturn
