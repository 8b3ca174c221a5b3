#include <bit>

#include "merkle.h"

namespace steadyturn {

namespace {

// Leaves in the left branch: the largest power of two below `leaves`. REQUIRES: leaves ≥ 2.
std::uint64_t leftOf(std::uint64_t leaves) { return std::bit_floor(leaves - 1); }

std::uint64_t countOf(LeafRange leaves) { return leaves.end - leaves.begin; }
LeafRange leftBranch(LeafRange leaves) { return {leaves.begin, leaves.begin + leftOf(countOf(leaves))}; }
LeafRange rightBranch(LeafRange leaves) { return {leaves.begin + leftOf(countOf(leaves)), leaves.end}; }

// SUBPROOF of RFC 9162, 2.1.4.1. `known`: whoever asks has the root of the first leaves already.
void consistencyOf(const NodeSource& nodes, LeafRange leaves, std::uint64_t first, bool known,
                   std::vector<Hash>& proof) {
  if (first == countOf(leaves)) {
    if (!known) proof.push_back(rootOf(nodes, leaves));
    return;
  }
  const auto left = leftOf(countOf(leaves));
  if (first <= left) {
    consistencyOf(nodes, leftBranch(leaves), first, known, proof);
    proof.push_back(rootOf(nodes, rightBranch(leaves)));
  } else {
    consistencyOf(nodes, rightBranch(leaves), first - left, false, proof);
    proof.push_back(rootOf(nodes, leftBranch(leaves)));
  }
}

std::vector<Hash> inclusionOf(const NodeSource& nodes, LeafRange leaves, std::uint64_t index) {
  if (countOf(leaves) == 1) return {};
  const auto left = leftBranch(leaves), right = rightBranch(leaves);
  const bool inLeft = index < left.end;
  auto proof = inclusionOf(nodes, inLeft ? left : right, index);
  proof.push_back(rootOf(nodes, inLeft ? right : left));
  return proof;
}

}  // namespace

Hash rootOf(const NodeSource& nodes, LeafRange leaves) {
  const auto count = countOf(leaves);
  if (count == 0) return sha256({});
  if (std::has_single_bit(count)) {
    const auto level = std::countr_zero(count);
    return nodes(level, leaves.begin >> level);
  }
  return nodeHash(rootOf(nodes, leftBranch(leaves)), rootOf(nodes, rightBranch(leaves)));
}

std::vector<Hash> inclusionProof(const NodeSource& nodes, std::uint64_t size, std::uint64_t index) {
  return inclusionOf(nodes, {0, size}, index);
}

bool provesInclusion(std::span<const Hash> proof, const Hash& leaf, std::uint64_t index, std::uint64_t size,
                     const Hash& root) {
  if (index >= size) return false;
  auto last = size - 1;
  auto found = leaf;
  for (const auto& sibling : proof) {
    if (last == 0) return false;
    if ((index & 1) != 0 || index == last) {
      found = nodeHash(sibling, found);
      // A last leaf without a neighbour rises until it has one.
      for (; (index & 1) == 0; index >>= 1) last >>= 1;
    } else {
      found = nodeHash(found, sibling);
    }
    index >>= 1;
    last >>= 1;
  }
  return last == 0 && found == root;
}

std::vector<Hash> consistencyProof(const NodeSource& nodes, std::uint64_t size, std::uint64_t oldSize) {
  std::vector<Hash> proof;
  consistencyOf(nodes, {0, size}, oldSize, true, proof);
  return proof;
}

bool provesConsistency(std::span<const Hash> proof, std::uint64_t oldSize, const Hash& oldRoot, std::uint64_t size,
                       const Hash& root) {
  return oldSize > 0 && provesSubtree(proof, {0, oldSize}, oldRoot, size, root);
}

bool isSubtree(LeafRange leaves) {
  constexpr auto largest = std::uint64_t{1} << 63;
  if (leaves.begin > leaves.end) return false;
  const auto count = leaves.end - leaves.begin;
  return count <= largest && (count == 0 || leaves.begin % std::bit_ceil(count) == 0);
}

// RFC 9162, 2.1.4.2, with a beginning that need not be 0: two hashes rise side by side, that of the subtree and that
// of the whole tree.
bool provesSubtree(std::span<const Hash> proof, LeafRange subtree, const Hash& subtreeRoot, std::uint64_t size,
                   const Hash& root) {
  if (!isSubtree(subtree) || subtree.end > size) return false;
  if (subtree.begin == subtree.end) return proof.empty() && subtreeRoot == sha256({});
  auto first = subtree.begin, last = subtree.end - 1, lastOfAll = size - 1;
  const auto rise = [&] {
    first >>= 1;
    last >>= 1;
    lastOfAll >>= 1;
  };
  while (first != last && (last == lastOfAll || (last & 1) != 0)) rise();
  // A subtree that is one node of the tree is not repeated in the proof.
  if (first != last && proof.empty()) return false;
  const auto start = first == last ? subtreeRoot : proof.front();
  if (first != last) proof = proof.subspan(1);
  auto part = start, whole = start;
  for (const auto& sibling : proof) {
    if (lastOfAll == 0) return false;
    if ((last & 1) != 0 || last == lastOfAll) {
      if (first < last) part = nodeHash(sibling, part);
      whole = nodeHash(sibling, whole);
      while ((last & 1) == 0 && last != 0) rise();
    } else {
      whole = nodeHash(whole, sibling);
    }
    rise();
  }
  return lastOfAll == 0 && part == subtreeRoot && whole == root;
}

}  // namespace steadyturn
