// Signing keys, signed checkpoints and papers that were handed out: what makes the shop's ledger hold towards people
// who do not trust whoever has its file. Instants are UTC; hashes, keys and signatures hexadecimal digits.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "issued_report.h"
#include "key_seal.h"
#include "shop.h"
#include "signing.h"

namespace steadyturn {

// Keys. The newest is in force; each replaces the one before. The private key lies in the shop under a passphrase of
// at least 8 characters; nobody can say what it was when it is forgotten.
Result<std::vector<SigningKey>> signingKeys(const Shop& shop);  // the oldest first
Result<bool> hasSigningKey(const Shop& shop);
// The first key. Problems: Conflict when there is one already, BadInput ("holder", "passphrase"), Unavailable.
Result<SigningKey> makeSigningKey(Shop& shop, const std::string& holder, const std::string& passphrase,
                                  const SealCost& cost = {});
// The next key, signed by the one in force. Problems: as above; NotFound without a key, NotPermitted ("passphrase").
Result<SigningKey> replaceSigningKey(Shop& shop, const std::string& holder, const std::string& oldPassphrase,
                                     const std::string& passphrase, const SealCost& cost = {});
// The next key where the one in force can't sign any more. Every verification tells of it with the reason.
Result<SigningKey> replaceLostKey(Shop& shop, const std::string& holder, const std::string& reason,
                                  const std::string& passphrase, const SealCost& cost = {});
Result<void> changePassphrase(Shop& shop, const std::string& oldPassphrase, const std::string& passphrase,
                              const SealCost& cost = {});

// Signs the ledger's head as it is now. Problems: NotFound without a key, NotPermitted ("passphrase"), Unavailable.
struct SignedHead {
  SignedCheckpoint checkpoint;
  std::int64_t entry = 0;  // of the ledger, that tells of it
  SigningKey key;
  std::string statement;  // the text that was signed
};
Result<SignedHead> signCheckpoint(Shop& shop, const std::string& passphrase, const std::string& occasion);

// The certificate of a check under a checkpoint that is signed for it. Problems: as above, and the certificate's own.
Result<CertificateData> signedCertificate(Shop& shop, std::int64_t check, const std::string& passphrase);

// Papers. Every file that leaves the program as a report is entered with the hash of its bytes. A paper is written
// first and entered then: a shop that can't take the entry (read-only, busy, damaged) is no reason to keep the paper
// back, but whoever asked for it is told.
struct PaperSubject {
  std::string what;  // "certificate", "history", "job", "due", "register", "labels", "recall" …
  std::string id{};  // of the check, tool or job; "" for papers about many
};
// `file`: how its name ends, "pdf". Problems: Unavailable.
Result<IssuedReportEntry> recordIssue(Shop& shop, const PaperSubject& paper, const std::string& file,
                                      std::string_view bytes);
// Whether a file was issued by this shop: every entry with the hash of these bytes, the oldest first.
Result<std::vector<IssuedReportEntry>> issuesOf(const Shop& shop, std::string_view bytes);

}  // namespace steadyturn
