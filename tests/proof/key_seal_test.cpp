#include "key_seal.h"

#include <gtest/gtest.h>

#include "cheap_seal.h"

namespace steadyturn {
namespace {

TEST(KeySeal, OpensWithItsPassphraseAlone) {
  const auto seed = Seed::random();
  const auto seal = sealSeed(seed, "correct horse", cheap).value();
  const auto opened = openSeal(seal, "correct horse");
  ASSERT_TRUE(opened);
  EXPECT_EQ(opened->bytes(), seed.bytes());
  for (const auto* other : {"", "correct hors", "Correct horse", "correct horse "}) {
    const auto refused = openSeal(seal, other);
    ASSERT_FALSE(refused) << other;
    EXPECT_EQ(refused.error().front().kind, ProblemKind::NotPermitted);
  }
}

TEST(KeySeal, IsAnotherEachTime) {
  const auto seed = Seed::random();
  const auto one = sealSeed(seed, "correct horse", cheap).value(),
             other = sealSeed(seed, "correct horse", cheap).value();
  EXPECT_NE(one.salt, other.salt);
  EXPECT_NE(one.box, other.box);
  EXPECT_NE(Seed::random().bytes(), seed.bytes());
}

TEST(KeySeal, ThatWasChangedDoesNotOpen) {
  const auto seal = sealSeed(Seed::random(), "correct horse", cheap).value();
  for (auto part : {&KeySeal::salt, &KeySeal::nonce, &KeySeal::box}) {
    auto changed = seal;
    (changed.*part)[3] = static_cast<char>((changed.*part)[3] ^ 1);
    EXPECT_FALSE(openSeal(changed, "correct horse"));
    (changed.*part).pop_back();
    EXPECT_FALSE(openSeal(changed, "correct horse"));
  }
  auto heavy = seal;
  heavy.cost.memory = std::uint64_t{1} << 50;
  EXPECT_FALSE(openSeal(heavy, "correct horse")) << "and takes no memory for it";
}

}  // namespace
}  // namespace steadyturn
