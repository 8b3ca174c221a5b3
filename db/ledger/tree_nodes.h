// The inner hashes of the ledger's Merkle tree, kept as it grows: of each complete subtree of 16, 256, 4,096 …
// leaves. What lies between is folded from at most eight of these, so a root or a proof reads a number of rows that
// grows with the logarithm of the ledger, and an entry costs one more row in fifteen. They are derived, never
// believed by a verification, which makes them anew.
#pragma once

#include <cstdint>
#include <optional>

#include "database.h"
#include "merkle.h"
#include "statement.h"

namespace steadyturn {

// A stored hash; all zero where it has not 32 bytes (nothing hashes to that).
Hash asHash(const QByteArray& bytes);

class TreeNodes {
 public:
  static constexpr int step = 4;  // levels between those that are kept

  explicit TreeNodes(Database& database);
  // Adds what the ledger's first `size` entries complete, and what is missing from before. Within the transaction
  // that appended them.
  void grow(std::int64_t size);
  // Root of 2^level leaves at `position`. REQUIRES: the ledger has them (StoreError, damaged, otherwise).
  Hash node(int level, std::uint64_t position);
  NodeSource source() {
    return [this](int level, std::uint64_t position) { return node(level, position); };
  }
  std::uint64_t rowsRead() const { return rowsRead_; }

 private:
  // Nothing where a leaf is missing.
  std::optional<Hash> find(int level, std::uint64_t position);
  std::optional<Hash> kept(int level, std::uint64_t position);
  std::optional<Hash> fold(int level, std::uint64_t position);
  std::uint64_t countAt(int level);

  Statement leaves_, nodes_, newest_, insert_;
  std::uint64_t rowsRead_ = 0;
};

// The root of the ledger's first `size` entries.
Hash ledgerRoot(Database& database, std::uint64_t size);

}  // namespace steadyturn
