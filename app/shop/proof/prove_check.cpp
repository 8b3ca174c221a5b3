#include "inside.h"
#include "shop_proof.h"
#include "snapshot.h"
#include "tree_nodes.h"

namespace steadyturn {

namespace {

// Nothing was there yet, or its entry is not.
auto withoutEntry(std::int64_t check) {
  return refuse({.kind = ProblemKind::Unavailable,
                 .field = "shop",
                 .found = "check " + std::to_string(check) + " without a ledger entry",
                 .accepted = "a shop that is not damaged: verify it"});
}

auto noSuchCheck(std::int64_t check) {
  return refuse({.kind = ProblemKind::NotFound,
                 .field = "check",
                 .found = std::to_string(check),
                 .accepted = "the number of a check of this shop; list them"});
}

}  // namespace

Result<EntryProof> proveCheck(const Shop& shop, std::int64_t check, std::optional<std::uint64_t> size) {
  return guarded([&]() -> Result<EntryProof> {
    auto& inside = shop.inside();
    auto& database = inside.database;
    const Snapshot snapshot(database);
    Statement record(database, "SELECT entry FROM check_record WHERE id = ?");
    if (!record.run(check).next()) return noSuchCheck(check);
    const auto sequence = record.integer(0);
    record.finish();
    const auto newest = static_cast<std::uint64_t>(inside.ledger.size());
    if (sequence < 1 || static_cast<std::uint64_t>(sequence) > newest) return withoutEntry(check);
    const auto whole = std::min(size.value_or(newest), newest);
    if (static_cast<std::uint64_t>(sequence) > whole) return noSuchCheck(check);
    const auto index = static_cast<std::uint64_t>(sequence - 1);
    TreeNodes nodes(database);
    const auto leaf = nodes.node(0, index);
    const auto root = rootOf(nodes.source(), {0, whole});
    const auto path = inclusionProof(nodes.source(), whole, index);
    if (!provesInclusion(path, leaf, index, whole, root)) return withoutEntry(check);
    EntryProof proof{
        .sequence = sequence, .leaf = writeHash(leaf), .head = {.size = whole, .root = root}, .path = {}};
    for (const auto& hash : path) proof.path.push_back(writeHash(hash));
    return proof;
  });
}

}  // namespace steadyturn
