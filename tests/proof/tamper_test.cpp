// Somebody changes one thing in the file, past the program and its guards: it is found, and the right record is
// named.
#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cstdio>
#include <cstdlib>

#include "demo_copy.h"
#include "signed_depot.h"
#include "tampering.h"

namespace steadyturn {
namespace {

// As a word: "check 1" is not in "check 12".
bool names(const std::string& text, const std::string& record) {
  for (auto at = text.find(record); at != std::string::npos; at = text.find(record, at + 1)) {
    const auto end = at + record.size();
    if (end == text.size() || std::isalnum(static_cast<unsigned char>(text[end])) == 0) return true;
  }
  return false;
}

bool found(const Verification& verification, const Done& done) {
  return std::ranges::any_of(verification.faults, [&](const Fault& fault) {
    return fault.entry == done.entry || names(fault.what, done.record);
  });
}

// Changes in all, a fifth of them a batch, so that no single test runs long. The full trial:
// STEADYTURN_TAMPERINGS=2000. Another one: STEADYTURN_TAMPER_SEED.
constexpr std::uint64_t batches = 5;
std::uint64_t asked(const char* variable, std::uint64_t otherwise) {
  const char* value = std::getenv(variable);
  return value != nullptr ? std::strtoull(value, nullptr, 10) : otherwise;
}
std::uint64_t wanted() { return asked("STEADYTURN_TAMPERINGS", 300); }
std::uint64_t firstSeed() { return asked("STEADYTURN_TAMPER_SEED", 20261125); }

TEST(Tamper, AnUntouchedShopIsIntact) {
  const auto& depot = signedDepot();
  const auto shop = Shop::open(depot.original).value();
  for (const auto& key : {std::string(), depot.trustedKey}) {
    for (const auto& checkpoint : {std::optional<Checkpoint>(), std::optional(depot.outside)}) {
      const auto verification = verifyShop(shop, checkpoint, {}, key).value();
      EXPECT_TRUE(verification.intact()) << listed(verification);
      EXPECT_GT(verification.entries, 500);
      EXPECT_TRUE(parseHash(verification.head));
    }
  }
  for (const auto& copy : depot.older) EXPECT_TRUE(verified(copy.path).intact()) << listed(verified(copy.path));
}

TEST(Tamper, DroppingTheGuardsAloneChangesNoRecord) {
  const auto path = signedDepot().fresh();
  { RawShop raw(path); }
  const auto verification = verified(path);
  EXPECT_TRUE(verification.intact()) << listed(verification);
  EXPECT_EQ(verification.head, verified(signedDepot().original).head);
}

// Every older copy is whole in itself; the checkpoint that somebody kept says what it is.
TEST(Tamper, AnOlderCopyPutBackIsFoundByACheckpoint) {
  const auto& depot = signedDepot();
  for (const auto& copy : depot.older) {
    const auto verification = verified(copy.path, depot.outside);
    ASSERT_EQ(verification.faults.size(), 1U) << listed(verification);
    EXPECT_EQ(verification.faults.front().entry, copy.entries);
    EXPECT_NE(verification.faults.front().what.find("older copy"), std::string::npos);
  }
}

class SingleChanges : public testing::TestWithParam<std::uint64_t> {};

TEST_P(SingleChanges, AreFoundAndTheirRecordsNamed) {
  const auto& depot = signedDepot();
  std::uint64_t changes = 0;
  for (std::uint64_t i = GetParam(); i < wanted(); i += batches, ++changes) {
    const auto seed = firstSeed() + i;
    const auto path = depot.fresh();
    const auto done = [&] {
      RawShop raw(path);
      return Tampering(raw, depot.signedTo, seed).once();
    }();
    const auto witness = done.seen == Seen::WithACheckpoint ? std::optional(depot.outside) : std::nullopt;
    const auto verification = verified(path, witness);
    EXPECT_FALSE(verification.intact()) << "seed " << seed << ": " << done.what;
    EXPECT_TRUE(found(verification, done))
        << "seed " << seed << ": " << done.what << "\nwanted " << done.record << ", entry " << done.entry << "\n"
        << listed(verification);
  }
  std::printf("%llu changes from seed %llu on, every %lluth\n", static_cast<unsigned long long>(changes),
              static_cast<unsigned long long>(firstSeed() + GetParam()), static_cast<unsigned long long>(batches));
}

INSTANTIATE_TEST_SUITE_P(Batch, SingleChanges, testing::Range<std::uint64_t>(0, batches));

}  // namespace
}  // namespace steadyturn
