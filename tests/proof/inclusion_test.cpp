#include <gtest/gtest.h>

#include <algorithm>

#include "demo_copy.h"
#include "raw_shop.h"

namespace steadyturn {
namespace {

TEST(EntryProof, LeadsFromTheStoredBytesToTheHead) {
  const auto path = demoCopies().fresh();
  const auto shop = Shop::open(path).value();
  for (const std::int64_t check : {1, 2, 77}) {
    const auto proof = proveCheck(shop, check);
    ASSERT_TRUE(proof) << check;
    EXPECT_EQ(writeCheckpoint(proof->head), writeCheckpoint(ledgerHead(shop).value()));
    RawShop raw(path);
    EXPECT_EQ(raw.integer("SELECT entry FROM check_record WHERE id = " + std::to_string(check)), proof->sequence);
    const auto hex = raw.text("SELECT hex(entry) FROM ledger WHERE seq = " + std::to_string(proof->sequence));
    const auto leaf =
        sha256(std::string(1, '\0') + QByteArray::fromHex(QByteArray::fromStdString(hex)).toStdString());
    EXPECT_EQ(writeHash(leaf), proof->leaf);
    std::vector<Hash> hashes;
    for (const auto& step : proof->path) hashes.push_back(parseHash(step).value());
    const auto index = static_cast<std::uint64_t>(proof->sequence - 1);
    EXPECT_TRUE(provesInclusion(hashes, leaf, index, proof->head.size, proof->head.root)) << check;
    EXPECT_FALSE(provesInclusion(hashes, sha256("other"), index, proof->head.size, proof->head.root)) << check;
  }
}

TEST(EntryProof, NeedsACheckThatIsThere) {
  const auto shop = Shop::open(demoCopies().fresh()).value();
  const auto refused = proveCheck(shop, 4711);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().front().kind, ProblemKind::NotFound);
}

}  // namespace
}  // namespace steadyturn
