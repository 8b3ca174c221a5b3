// The shop's signing keys, the seal of the newest one's private key, and signed checkpoints. Keys and checkpoints are
// evidence: INSERT only. The seal is replaced with the passphrase.
#pragma once

#include <optional>
#include <vector>

#include "key_seal.h"
#include "ledger.h"
#include "proven_rows.h"
#include "signing.h"

namespace steadyturn {

class SigningTable {
 public:
  SigningTable(Database& database, Ledger& ledger) : database_(database), ledger_(ledger) {}
  // Ledger kind "signing_key". The seal of the key before goes.
  void addKey(const SigningKey& key, const KeySeal& seal, const EntryStamp& stamp);
  std::vector<SigningKey> keys() const;  // the oldest first; the last is in force
  std::optional<KeySeal> sealOf(const std::string& key) const;
  void replaceSeal(const std::string& key, const KeySeal& seal);
  // Ledger kind "checkpoint"; returns its entry.
  std::int64_t add(const SignedCheckpoint& checkpoint, const EntryStamp& stamp);
  // For a proof.
  ProvenRows provenKeys() const;
  ProvenRows provenCheckpoints() const;

 private:
  Database& database_;
  Ledger& ledger_;
};

}  // namespace steadyturn
