// Signatures along the ledger: who may sign from which entry on, and whether what was signed is the ledger as it
// stands. What a signature covers can't be written anew without its key.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "record_match.h"
#include "signing.h"

namespace steadyturn {

class SignatureTrail {
 public:
  explicit SignatureTrail(ReportFault report) : report_(std::move(report)) {}
  // The next entry, with the tree of those before it.
  void told(std::int64_t entry, std::string_view kind, std::string_view facts, const GrowingTree& before);
  // After the last entry. `trusted`: a public key that is known from outside the shop, or "".
  void finish(const std::string& trusted, Verification& into) const;

 private:
  struct Statement {  // what a key vouches for, in an entry of its own
    std::int64_t entry;
    std::string name;  // for people
    std::uint64_t size;
    std::string root;
  };
  void addKey(std::int64_t entry, SigningKey key, const GrowingTree& before);
  void addCheckpoint(std::int64_t entry, const SignedCheckpoint& checkpoint, const GrowingTree& before);
  void compareTree(const Statement& statement, const GrowingTree& before);
  void compareKeyBefore(std::int64_t entry, const SigningKey& key);
  void covered(std::uint64_t size, const std::string& at, const SigningKey& by);

  ReportFault report_;
  std::string shop_;  // its id, as the ledger has told so far
  std::vector<SigningKey> keys_;
  std::optional<LastSigned> last_;
  std::uint64_t lastGood_ = 0;  // entries that a good statement covers
  std::int64_t signatures_ = 0;
};

}  // namespace steadyturn
