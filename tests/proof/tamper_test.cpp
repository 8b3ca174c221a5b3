// Somebody changes one thing in the file, past the program and its guards: it is found, and the right record is
// named.
#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cstdlib>

#include "demo_copy.h"
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

// Changes in all, a fifth of them a batch, so that no single test runs long. More: STEADYTURN_TAMPERINGS=2000.
constexpr std::uint64_t batches = 5;
std::uint64_t wanted() {
  const char* asked = std::getenv("STEADYTURN_TAMPERINGS");
  return asked != nullptr ? std::strtoull(asked, nullptr, 10) : 200;
}

TEST(Tamper, AnUntouchedShopIsIntact) {
  const auto verification = verified(demoCopies().original());
  EXPECT_TRUE(verification.intact()) << listed(verification);
  EXPECT_GT(verification.entries, 500);
  EXPECT_TRUE(parseHash(verification.head));
}

TEST(Tamper, DroppingTheGuardsAloneChangesNoRecord) {
  const auto path = demoCopies().fresh();
  { RawShop raw(path); }
  const auto verification = verified(path);
  EXPECT_TRUE(verification.intact()) << listed(verification);
  EXPECT_EQ(verification.head, verified(demoCopies().original()).head);
}

class SingleChanges : public testing::TestWithParam<std::uint64_t> {};

TEST_P(SingleChanges, AreFoundAndTheirRecordsNamed) {
  for (std::uint64_t seed = GetParam(); seed < wanted(); seed += batches) {
    const auto path = demoCopies().fresh();
    const auto done = [&] {
      RawShop raw(path);
      return Tampering(raw, seed).once();
    }();
    const auto verification = verified(path);
    EXPECT_FALSE(verification.intact()) << "seed " << seed << ": " << done.what;
    EXPECT_TRUE(found(verification, done))
        << "seed " << seed << ": " << done.what << "\nwanted " << done.record << ", entry " << done.entry << "\n"
        << listed(verification);
  }
}

INSTANTIATE_TEST_SUITE_P(Batch, SingleChanges, testing::Range<std::uint64_t>(0, batches));

}  // namespace
}  // namespace steadyturn
