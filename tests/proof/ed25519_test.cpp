#include "ed25519.h"

#include <gtest/gtest.h>

#include <charconv>

#include "reference_table.h"

namespace steadyturn {
namespace {

using testing::ReferenceTable;

std::string octetsOf(const std::string& hex) {
  std::string bytes;
  for (std::size_t i = 0; i < hex.size(); i += 2) {
    unsigned byte = 0;
    std::from_chars(&hex[i], &hex[i] + 2, byte, 16);
    bytes += static_cast<char>(byte);
  }
  return bytes;
}

Seed seedOf(const std::string& hex) {
  const auto bytes = octetsOf(hex);
  Seed::Bytes seed{};
  std::copy(bytes.begin(), bytes.end(), seed.begin());
  return Seed(seed);
}

TEST(Ed25519, GivesThePublishedKeysAndSignatures) {
  const auto table = ReferenceTable::load("rfc8032_ed25519.csv");
  ASSERT_EQ(table.rows(), 4U);
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const auto seed = seedOf(table.text(row, "seed"));
    const auto message = octetsOf(table.text(row, "message"));
    EXPECT_EQ(publicKeyOf(seed), table.text(row, "public")) << row;
    EXPECT_EQ(signatureOf(seed, message), table.text(row, "signature")) << row;
    EXPECT_TRUE(isSignedBy(table.text(row, "public"), message, table.text(row, "signature"))) << row;
  }
}

TEST(Ed25519, RefusesWhatWasNotSigned) {
  const auto table = ReferenceTable::load("rfc8032_ed25519.csv");
  const auto& key = table.text(1, "public");
  const auto& signature = table.text(1, "signature");
  EXPECT_FALSE(isSignedBy(key, "other", signature));
  EXPECT_FALSE(isSignedBy(table.text(2, "public"), octetsOf(table.text(1, "message")), signature));
  for (std::size_t digit = 0; digit < signature.size(); digit += 7) {
    auto turned = signature;
    turned[digit] = turned[digit] == '0' ? '1' : '0';
    EXPECT_FALSE(isSignedBy(key, octetsOf(table.text(1, "message")), turned)) << digit;
  }
  EXPECT_FALSE(isSignedBy(key, "", ""));
  EXPECT_FALSE(isSignedBy("", "", signature));
}

// A key of all zero bytes is a point of low order, under which anybody can sign (RFC 8032, 5.1.7 with 8.4).
TEST(Ed25519, RefusesAKeyThatVouchesForNothing) {
  const std::string zero(64, '0'), identity = "01" + std::string(62, '0');
  EXPECT_FALSE(isSignedBy(zero, "", std::string(128, '0')));
  EXPECT_FALSE(isSignedBy(identity, "", identity + std::string(64, '0')));
}

// The digest was taken with coreutils:
// printf %s d75a98…511a | tr a-f A-F | basenc --base16 -d | sha256sum
TEST(KeyId, IsTheBeginningOfTheKeysHash) {
  EXPECT_EQ(keyIdOf("d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a"), "21fe31dfa154a261");
  EXPECT_FALSE(keyIdOf("d75a"));
}

}  // namespace
}  // namespace steadyturn
