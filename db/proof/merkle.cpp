#include "merkle.h"

#include <sodium.h>

#include <bit>

namespace steadyturn {

namespace {

// Leaves in the left branch: the largest power of two below `leaves`. REQUIRES: leaves ≥ 2.
std::uint64_t leftOf(std::uint64_t leaves) { return std::bit_floor(leaves - 1); }

// SUBPROOF of RFC 9162, 2.1.4.1. `known`: whoever asks has the root of these first leaves already.
void consistencyOf(std::span<const Hash> leaves, std::uint64_t first, bool known, std::vector<Hash>& proof) {
  if (first == leaves.size()) {
    if (!known) proof.push_back(rootOf(leaves));
    return;
  }
  const auto left = leftOf(leaves.size());
  if (first <= left) {
    consistencyOf(leaves.first(left), first, known, proof);
    proof.push_back(rootOf(leaves.subspan(left)));
  } else {
    consistencyOf(leaves.subspan(left), first - left, false, proof);
    proof.push_back(rootOf(leaves.first(left)));
  }
}

}  // namespace

Hash sha256(std::string_view bytes) {
  Hash hash;
  crypto_hash_sha256(hash.data(), reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
  return hash;
}

Hash nodeHash(const Hash& left, const Hash& right) {
  std::array<unsigned char, 65> node{0x01};
  std::copy(left.begin(), left.end(), node.begin() + 1);
  std::copy(right.begin(), right.end(), node.begin() + 33);
  Hash hash;
  crypto_hash_sha256(hash.data(), node.data(), node.size());
  return hash;
}

std::string writeHash(const Hash& hash) {
  std::array<char, 65> digits{};
  sodium_bin2hex(digits.data(), digits.size(), hash.data(), hash.size());
  return digits.data();
}

std::optional<Hash> parseHash(std::string_view typed) {
  Hash hash;
  if (typed.size() != 2 * hash.size()) return std::nullopt;
  std::size_t read = 0;
  if (sodium_hex2bin(hash.data(), hash.size(), typed.data(), typed.size(), nullptr, &read, nullptr) != 0 ||
      read != hash.size()) {
    return std::nullopt;
  }
  return hash;
}

void GrowingTree::add(const Hash& leaf) {
  auto peak = leaf;
  for (auto bits = size_++; (bits & 1) != 0; bits >>= 1) {
    peak = nodeHash(peaks_.back(), peak);
    peaks_.pop_back();
  }
  peaks_.push_back(peak);
}

Hash GrowingTree::root() const {
  if (peaks_.empty()) return sha256({});
  auto root = peaks_.back();
  for (auto peak = peaks_.rbegin() + 1; peak != peaks_.rend(); ++peak) root = nodeHash(*peak, root);
  return root;
}

Hash rootOf(std::span<const Hash> leaves) {
  GrowingTree tree;
  for (const auto& leaf : leaves) tree.add(leaf);
  return tree.root();
}

std::vector<Hash> inclusionProof(std::span<const Hash> leaves, std::uint64_t index) {
  if (leaves.size() == 1) return {};
  const auto left = leftOf(leaves.size());
  const bool inLeft = index < left;
  auto proof =
      inLeft ? inclusionProof(leaves.first(left), index) : inclusionProof(leaves.subspan(left), index - left);
  proof.push_back(rootOf(inLeft ? leaves.subspan(left) : leaves.first(left)));
  return proof;
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

std::vector<Hash> consistencyProof(std::span<const Hash> leaves, std::uint64_t oldSize) {
  std::vector<Hash> proof;
  consistencyOf(leaves, oldSize, true, proof);
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
