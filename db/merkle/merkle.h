// Merkle trees over hashes of leaves as RFC 6962, 2.1 and RFC 9162, 2.1 have them: node = SHA-256(0x01 ‖ left ‖
// right), split at the largest power of two below the number of leaves, the root of no leaves SHA-256 of nothing. The
// leaf's own hash is leafHash() of the ledger. A subtree is a run of leaves that stands in the tree as a tree of its
// own.
#pragma once

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace steadyturn {

using Hash = std::array<unsigned char, 32>;

Hash sha256(std::string_view bytes);
Hash nodeHash(const Hash& left, const Hash& right);
std::string writeHash(const Hash& hash);                // 64 hexadecimal digits, lower case
std::optional<Hash> parseHash(std::string_view typed);  // 64 hexadecimal digits, any case

// A tree that takes leaf after leaf and keeps no more than one hash for each power of two: its root at any moment.
class GrowingTree {
 public:
  // Told of each complete subtree of 2^level leaves (level ≥ 1) with its place among those of its size, from 0.
  using Completed = std::function<void(int level, std::uint64_t position, const Hash& root)>;
  explicit GrowingTree(Completed told = {}) : told_(std::move(told)) {}
  void add(const Hash& leaf);
  std::uint64_t size() const { return size_; }
  Hash root() const;

 private:
  Completed told_;
  std::uint64_t size_ = 0;
  std::vector<Hash> peaks_;  // roots of the full subtrees, the largest first: one for each bit of size_
};

Hash rootOf(std::span<const Hash> leaves);

// Leaves `begin` to before `end`, counted from 0.
struct LeafRange {
  std::uint64_t begin = 0;
  std::uint64_t end = 0;
};

// Roots of complete subtrees of 2^level leaves (level 0: the leaves), `position` counted from 0 among those of the
// size. A root or proof of a tree asks for some two of each size.
using NodeSource = std::function<Hash(int level, std::uint64_t position)>;
// REQUIRES: `leaves` begins at a multiple of the power of two that holds it.
Hash rootOf(const NodeSource& nodes, LeafRange leaves);

// The hashes that lead from leaf `index` (from 0) to the root. REQUIRES: index < size.
std::vector<Hash> inclusionProof(const NodeSource& nodes, std::uint64_t size, std::uint64_t index);
// Whether `proof` leads from the leaf to the root (RFC 9162, 2.1.3.2).
bool provesInclusion(std::span<const Hash> proof, const Hash& leaf, std::uint64_t index, std::uint64_t size,
                     const Hash& root);

// The hashes that show that the tree of the first `oldSize` leaves has only grown since. REQUIRES: 0 < oldSize ≤
// size.
std::vector<Hash> consistencyProof(const NodeSource& nodes, std::uint64_t size, std::uint64_t oldSize);
// Whether `proof` shows that the tree of `size` leaves begins with the older one (RFC 9162, 2.1.4.2). Nothing is
// shown by an empty older tree, which is refused.
bool provesConsistency(std::span<const Hash> proof, std::uint64_t oldSize, const Hash& oldRoot, std::uint64_t size,
                       const Hash& root);

// Whether a run of leaves stands in every larger tree as a tree of its own: it begins at a multiple of the power of
// two that holds it.
bool isSubtree(LeafRange leaves);
// Whether `proof` shows that the tree of `size` leaves holds `subtree` with root `subtreeRoot`.
bool provesSubtree(std::span<const Hash> proof, LeafRange subtree, const Hash& subtreeRoot, std::uint64_t size,
                   const Hash& root);

}  // namespace steadyturn
