#include "inside.h"
#include "shop_proof.h"
#include "snapshot.h"
#include "verifier.h"

namespace steadyturn {

Result<EntryProof> proveCheck(const Shop& shop, std::int64_t check) {
  return guarded([&]() -> Result<EntryProof> {
    auto& database = shop.inside().database;
    const Snapshot snapshot(database);
    Statement record(database, "SELECT entry FROM check_record WHERE id = ?");
    if (!record.run(check).next()) {
      return refuse({.kind = ProblemKind::NotFound,
                     .field = "check",
                     .found = std::to_string(check),
                     .accepted = "the number of a check of this shop; list them"});
    }
    const auto sequence = record.integer(0);
    record.finish();
    const auto leaves = storedLeaves(database);
    if (sequence < 1 || static_cast<std::size_t>(sequence) > leaves.size()) {
      return refuse({.kind = ProblemKind::Unavailable,
                     .field = "shop",
                     .found = "check " + std::to_string(check) + " without a ledger entry",
                     .accepted = "a shop that is not damaged: verify it"});
    }
    const auto index = static_cast<std::uint64_t>(sequence - 1);
    EntryProof proof{.sequence = sequence,
                     .leaf = writeHash(leaves[index]),
                     .head = {.size = leaves.size(), .root = rootOf(leaves)},
                     .path = {}};
    for (const auto& hash : inclusionProof(leaves, index)) proof.path.push_back(writeHash(hash));
    return proof;
  });
}

}  // namespace steadyturn
