#include <QCryptographicHash>
#include <QProcess>
#include <array>
#include <bit>
#include <nlohmann/json.hpp>
#include <span>
#include <stdexcept>

#include "sample_records.h"
#include "shop_fixture.h"

namespace steadyturn {
namespace {

QByteArray sha256(const QByteArray& bytes) { return QCryptographicHash::hash(bytes, QCryptographicHash::Sha256); }

// RFC 6962, 2.1, over leaves that are hashed already; Qt's SHA-256, so that only the leaves are ours.
QByteArray treeHash(std::span<const QByteArray> leaves) {
  if (leaves.size() == 1) return leaves.front();
  const auto split = std::bit_floor(leaves.size() - 1);
  return sha256(QByteArray(1, '\x01') + treeHash(leaves.first(split)) + treeHash(leaves.subspan(split)));
}

// Leaves and roots of RFC 6962 trees of 1 to 8 entries: transparency-dev/merkle, testonly/constants.go (Apache-2.0).
constexpr std::array publishedLeaves{
    "", "00", "10", "2021", "3031", "40414243", "5051525354555657", "606162636465666768696a6b6c6d6e6f"};
constexpr std::array publishedRoots{"6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
                                    "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125",
                                    "aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77",
                                    "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
                                    "4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4",
                                    "76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef",
                                    "ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c",
                                    "5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328"};

TEST(LeafHash, GivesThePublishedRoots) {
  std::vector<QByteArray> leaves;
  for (const auto* hex : publishedLeaves) leaves.push_back(leafHash(QByteArray::fromHex(hex).toStdString()));
  for (std::size_t size = 1; size <= publishedRoots.size(); ++size) {
    EXPECT_EQ(treeHash(std::span(leaves).first(size)).toHex(), publishedRoots[size - 1]) << size;
  }
}

class LedgerTest : public ShopTest {
 protected:
  Facts factsOfLast(const std::string& kind) {
    const auto entry = Facts::parse(shop().lastEntry());
    EXPECT_EQ(entry["kind"], kind);
    EXPECT_EQ(entry["seq"], shop().ledger.size());
    EXPECT_EQ(entry["at"], stamp.at);
    EXPECT_EQ(entry["who"], stamp.who);
    return entry["facts"];
  }
};

TEST_F(LedgerTest, EveryWriteIsAnEntry) {
  std::int64_t size = 0;
  const auto wroteOne = [&](const std::string& kind, auto&& action) {
    write(action);
    EXPECT_EQ(shop().ledger.size(), ++size) << kind;
    return factsOfLast(kind);
  };
  EXPECT_EQ(wroteOne("tool", [](OpenShop& to) { to.tools.add(fullTool(), stamp); })["minimum"], "20.1");
  EXPECT_EQ(wroteOne("reference", [](OpenShop& to) { to.references.add(fullReference(), stamp); })["error_percent"],
            "-0.05");
  EXPECT_EQ(wroteOne("fastener", [](OpenShop& to) { to.fasteners.add(fullFastener(), stamp); })["part_limit"],
            "21.5");
  EXPECT_EQ(wroteOne("tool_status",
                     [](OpenShop& to) {
                       to.tools.setStatus("TW-07", ToolStatus::InService, "repaired", day(2026, 2, 1), stamp);
                     })["status"],
            "in service");
  const auto check = wroteOne("check", [](OpenShop& to) { to.checks.add(fullCheck(), stamp); });
  EXPECT_EQ(check["points"][0]["readings"], (Facts{"20.10", "20.2", "19.9"}));
  EXPECT_EQ(check["points"][1]["mean_deviation_percent"], "0.3333333333333333");
  EXPECT_EQ(check["corrects"], nullptr);
  EXPECT_EQ(wroteOne("tightening", [](OpenShop& to) { to.tightenings.add(fullTightening(), stamp); })["setting"],
            "13.30");
  EXPECT_EQ(wroteOne("setting", [](OpenShop& to) { to.shop.set("name", "Depot", stamp); })["value"], "Depot");
  EXPECT_EQ(wroteOne("import", [](OpenShop& to) { to.shop.rememberFile("checks", "ab12", 7, stamp); })["rows"], 7);
  // Each row knows its entry.
  EXPECT_EQ(shop().count("SELECT kind = 'check' FROM check_record r JOIN ledger l ON l.seq = r.entry"), 1);
}

// The bytes, written by hand from RFC 8785: sorted keys, no space, text as it is.
TEST_F(LedgerTest, AnEntryIsCanonicalBytes) {
  write([](OpenShop& to) { to.shop.set("name", "D\xC3\xA9p\xC3\xB4t \"A\"", stamp); });
  EXPECT_EQ(
      shop().lastEntry(),
      R"({"at":"2026-03-14T09:26:53.589Z","facts":{"name":"name","value":"Dépôt \"A\""},"kind":"setting","seq":1,)"
      R"("who":"petra"})");
}

TEST_F(LedgerTest, TheLeafIsWhatSha256sumSays) {
  write([](OpenShop& to) { to.tools.add(fullTool(), stamp); });
  Statement stored(shop().database, "SELECT entry, leaf FROM ledger");
  ASSERT_TRUE(stored.run().next());
  QProcess program;
  program.start("sha256sum", {"-"});
  ASSERT_TRUE(program.waitForStarted());
  program.write(QByteArray(1, '\0') + stored.bytes(0));
  program.closeWriteChannel();
  ASSERT_TRUE(program.waitForFinished());
  EXPECT_EQ(program.readAllStandardOutput().left(64), stored.bytes(1).toHex());
}

TEST_F(LedgerTest, ARollbackLeavesNeitherRowNorEntryAndTheCountGoesOn) {
  write([](OpenShop& to) { to.tools.add(bareTool(), stamp); });
  {
    Transaction abandoned(shop().database);
    shop().tools.add(fullTool(), stamp);
    shop().checks.add(bareCheck(), stamp);
  }
  EXPECT_EQ(shop().ledger.size(), 1);
  EXPECT_FALSE(shop().tools.find("TW-07"));
  EXPECT_EQ(shop().count("SELECT COUNT(*) FROM check_record"), 0);
  write([](OpenShop& to) { EXPECT_EQ(to.checks.add(bareCheck(), stamp), 1); });
  EXPECT_EQ(shop().ledger.size(), 2);
}

TEST_F(LedgerTest, NoEntryOutsideOfATransaction) {
  EXPECT_THROW(shop().ledger.append(stamp, "setting", Facts::object()), std::logic_error);
}

TEST_F(LedgerTest, TwoProgramsCountOneLedger) {
  auto other = Database::open(address_);
  ASSERT_TRUE(other);
  OpenShop second(std::move(*other));
  write([](OpenShop& to) { to.tools.add(bareTool(), stamp); });
  {
    Transaction theirs(second.database);
    second.tools.add(fullTool(), stamp);
    theirs.commit();
  }
  write([](OpenShop& to) { to.references.add(fullReference(), stamp); });
  EXPECT_EQ(second.ledger.size(), 3);
}

}  // namespace
}  // namespace steadyturn
