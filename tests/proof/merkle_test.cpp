#include "merkle.h"

#include <gtest/gtest.h>

#include <charconv>

#include "reference_table.h"

namespace steadyturn {
namespace {

using testing::ReferenceTable;

// FIPS 180-4 with NIST's "Example algorithms" for SHA-256: one block, two blocks, many blocks; and the empty message.
TEST(Sha256, GivesTheStandardsExamples) {
  EXPECT_EQ(writeHash(sha256("abc")), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(writeHash(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  EXPECT_EQ(writeHash(sha256(std::string(1000000, 'a'))),
            "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
  EXPECT_EQ(writeHash(sha256("")), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST(Hash, IsReadAsItIsWritten) {
  const auto hash = sha256("abc");
  EXPECT_EQ(parseHash(writeHash(hash)), hash);
  EXPECT_FALSE(parseHash(""));
  EXPECT_FALSE(parseHash(writeHash(hash).substr(1)));
  EXPECT_FALSE(parseHash(writeHash(hash) + "00"));
  EXPECT_FALSE(parseHash("g" + writeHash(hash).substr(1)));
}

std::string bytesOf(const std::string& hex) {
  std::string bytes;
  for (std::size_t i = 0; i < hex.size(); i += 2) {
    unsigned byte = 0;
    std::from_chars(&hex[i], &hex[i] + 2, byte, 16);
    bytes += static_cast<char>(byte);
  }
  return bytes;
}

// RFC 6962, 2.1: SHA-256(0x00 ‖ entry).
Hash leafOf(const std::string& entry) { return sha256(std::string(1, '\0') + entry); }

std::vector<Hash> publishedLeaves() {
  const auto table = ReferenceTable::load("merkle_roots.csv");
  std::vector<Hash> leaves;
  for (std::size_t row = 1; row < table.rows(); ++row) leaves.push_back(leafOf(bytesOf(table.text(row, "entry"))));
  return leaves;
}

TEST(MerkleTree, GivesThePublishedRoots) {
  const auto table = ReferenceTable::load("merkle_roots.csv");
  const auto leaves = publishedLeaves();
  ASSERT_EQ(leaves.size(), 8U);
  GrowingTree tree;
  for (std::size_t size = 0; size <= leaves.size(); ++size) {
    EXPECT_EQ(writeHash(tree.root()), table.text(size, "root")) << size;
    EXPECT_EQ(writeHash(rootOf(std::span(leaves).first(size))), table.text(size, "root")) << size;
    if (size < leaves.size()) tree.add(leaves[size]);
  }
}

std::uint64_t number(const ReferenceTable& table, std::size_t row, std::string_view column) {
  const auto& text = table.text(row, column);
  std::uint64_t value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  EXPECT_TRUE(error == std::errc() && end == text.data() + text.size()) << text;
  return value;
}

// Some published cases have a 12-byte text for a root that does not matter but for being equal or not.
std::optional<Hash> rootIn(std::string hex) {
  if (hex.size() == 24) hex.resize(64, '0');
  return parseHash(hex);
}

// Nothing where a hash is not one.
std::optional<std::vector<Hash>> proofIn(const std::string& hexes) {
  std::vector<Hash> proof;
  for (std::size_t begin = 0; begin < hexes.size();) {
    const auto end = std::min(hexes.find(' ', begin), hexes.size());
    const auto hash = parseHash(std::string_view(hexes).substr(begin, end - begin));
    if (!hash) return std::nullopt;
    proof.push_back(*hash);
    begin = end + 1;
  }
  return proof;
}

TEST(InclusionProof, HoldsOrIsRefusedAsPublished) {
  const auto table = ReferenceTable::load("merkle_inclusion.csv");
  ASSERT_EQ(table.rows(), 302U);
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const LeafRange tree{number(table, row, "first"), number(table, row, "end")};
    const auto index = number(table, row, "index");
    const auto proof = proofIn(table.text(row, "proof"));
    const auto leaf = parseHash(table.text(row, "leaf")), root = rootIn(table.text(row, "root"));
    const bool holds = proof && leaf && root && isSubtree(tree) && index >= tree.begin &&
                       provesInclusion(*proof, *leaf, index - tree.begin, tree.end - tree.begin, *root);
    EXPECT_EQ(holds, table.text(row, "outcome") == "holds") << table.text(row, "case");
  }
}

TEST(ConsistencyProof, HoldsOrIsRefusedAsPublished) {
  const auto table = ReferenceTable::load("merkle_consistency.csv");
  ASSERT_EQ(table.rows(), 216U);
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const auto& name = table.text(row, "case");
    const LeafRange part{number(table, row, "first"), number(table, row, "end")};
    const auto size = number(table, row, "size");
    const auto proof = proofIn(table.text(row, "proof"));
    const auto partRoot = rootIn(table.text(row, "part_root")), root = rootIn(table.text(row, "root"));
    const bool whole = name.starts_with("consistency/");
    const bool holds = proof && partRoot && root &&
                       (whole ? provesConsistency(*proof, part.end, *partRoot, size, *root)
                              : provesSubtree(*proof, part, *partRoot, size, *root));
    EXPECT_EQ(holds, table.text(row, "outcome") == "holds") << name;
  }
}

// The proofs made here hold, and not with any bit of them turned.
class MadeProofs : public ::testing::TestWithParam<std::size_t> {
 protected:
  static std::vector<Hash> leavesOf(std::size_t size) {
    std::vector<Hash> leaves;
    for (std::size_t i = 0; i < size; ++i) leaves.push_back(leafOf(std::to_string(i)));
    return leaves;
  }
  static NodeSource nodesOf(std::span<const Hash> leaves) {
    return [leaves](int level, std::uint64_t position) {
      return rootOf(leaves.subspan(position << level, std::size_t{1} << level));
    };
  }
  static std::vector<Hash> turned(std::vector<Hash> proof, std::size_t which) {
    proof[which][which % 32] ^= 0x10;
    return proof;
  }
};

TEST_P(MadeProofs, OfInclusionHold) {
  const auto leaves = leavesOf(GetParam());
  const auto root = rootOf(leaves);
  for (std::size_t index = 0; index < leaves.size(); ++index) {
    const auto proof = inclusionProof(nodesOf(leaves), leaves.size(), index);
    EXPECT_TRUE(provesInclusion(proof, leaves[index], index, leaves.size(), root)) << index;
    EXPECT_FALSE(provesInclusion(proof, leaves[index], index + 1, leaves.size(), root)) << index;
    EXPECT_FALSE(provesInclusion(proof, leafOf("other"), index, leaves.size(), root)) << index;
    for (std::size_t i = 0; i < proof.size(); ++i)
      EXPECT_FALSE(provesInclusion(turned(proof, i), leaves[index], index, leaves.size(), root)) << index;
  }
}

TEST_P(MadeProofs, OfConsistencyHold) {
  const auto leaves = leavesOf(GetParam());
  const auto root = rootOf(leaves);
  for (std::size_t old = 1; old <= leaves.size(); ++old) {
    const auto oldRoot = rootOf(std::span(leaves).first(old));
    const auto proof = consistencyProof(nodesOf(leaves), leaves.size(), old);
    EXPECT_TRUE(provesConsistency(proof, old, oldRoot, leaves.size(), root)) << old;
    EXPECT_FALSE(provesConsistency(proof, old, leafOf("other"), leaves.size(), root)) << old;
    for (std::size_t i = 0; i < proof.size(); ++i)
      EXPECT_FALSE(provesConsistency(turned(proof, i), old, oldRoot, leaves.size(), root)) << old;
  }
}

INSTANTIATE_TEST_SUITE_P(OfTreesOf, MadeProofs, ::testing::Values(1, 2, 3, 5, 7, 8, 13, 32, 33));

}  // namespace
}  // namespace steadyturn
