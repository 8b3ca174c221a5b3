#include <gtest/gtest.h>

#include "demo_copy.h"
#include "raw_shop.h"
#include "shop_signing.h"

namespace steadyturn {
namespace {

TEST(IssuedReport, IsKnownAgainByItsBytesAlone) {
  auto shop = Shop::open(demoCopies().fresh()).value();
  // FIPS 180-4, example of SHA-256.
  const auto issued = recordIssue(shop, {.what = "certificate", .id = "42"}, "pdf", "abc");
  ASSERT_TRUE(issued) << issued.error().front().accepted;
  EXPECT_EQ(issued->report.sha256, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  const auto found = issuesOf(shop, "abc").value();
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found.front().entry, issued->entry);
  EXPECT_EQ(found.front().at, issued->at);
  EXPECT_EQ(found.front().report.subject, "certificate");
  EXPECT_EQ(found.front().report.id, "42");
  EXPECT_EQ(found.front().report.file, "pdf");
  EXPECT_EQ(found.front().report.size, 3);
  EXPECT_TRUE(issuesOf(shop, "abd")->empty());
  EXPECT_TRUE(verifyShop(shop)->intact()) << listed(*verifyShop(shop));
}

TEST(IssuedReport, ThatSomebodySlippedInIsFound) {
  const auto path = demoCopies().fresh();
  {
    auto shop = Shop::open(path).value();
    ASSERT_TRUE(recordIssue(shop, {.what = "register"}, "pdf", "abc"));
  }
  {
    RawShop raw(path);
    ASSERT_TRUE(raw.run("UPDATE issued_report SET sha256 = '" + writeHash(sha256("abd")) + "'"));
  }
  const auto verification = verified(path);
  ASSERT_EQ(verification.faults.size(), 1U) << listed(verification);
  EXPECT_NE(verification.faults.front().what.find("issued register"), std::string::npos) << listed(verification);
}

}  // namespace
}  // namespace steadyturn
