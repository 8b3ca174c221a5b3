#include "merkle.h"

#include <sodium.h>

namespace steadyturn {

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
  int level = 0;
  for (auto bits = size_++; (bits & 1) != 0; bits >>= 1) {
    peak = nodeHash(peaks_.back(), peak);
    peaks_.pop_back();
    ++level;
    if (told_) told_(level, (size_ >> level) - 1, peak);
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

}  // namespace steadyturn
