// A shop on a server that falls silent while somebody types: it is said, what is typed stays, and goes on when the
// server answers again. Run by tests/with-server.
#include <QLabel>

#include "bench_place.h"
#include "demo_shop.h"
#include "keys.h"
#include "main_window.h"
#include "message_line.h"
#include "server_watch.h"
#include "settings.h"
#include "shop_room.h"
#include "test_server.h"
#include "text.h"

namespace steadyturn {
namespace {

class ServerWindow : public ::testing::Test {
 protected:
  void SetUp() override {
    if (!hasTestServer()) GTEST_SKIP() << "run by tests/with-server";
    address_ = freshDatabase();
    ASSERT_TRUE(Shop::createDemo(address_));
    window_.openShop(fromText(address_));
    present(window_);
    ASSERT_TRUE(window_.room());
  }
  std::string administration() const { return qEnvironmentVariable("STEADYTURN_TEST_SERVER").toStdString(); }
  // No connection to the shop's database stands or can be made.
  void silence() {
    const auto database = databaseOf(address_);
    ASSERT_EQ(sayToServer(administration(), "ALTER DATABASE " + database + " ALLOW_CONNECTIONS false"), "");
    ASSERT_EQ(
        sayToServer(administration(),
                    "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = '" + database + "'"),
        "");
  }
  void answerAgain() {
    ASSERT_EQ(sayToServer(administration(), "ALTER DATABASE " + databaseOf(address_) + " ALLOW_CONNECTIONS true"),
              "");
  }
  ServerWatch& watch() { return *window_.findChild<ServerWatch*>(); }
  bool says(const QString& words) {
    for (const MessageLine* line : window_.findChildren<MessageLine*>()) {
      if (line->isVisible() && line->text().contains(words)) return true;
    }
    return false;
  }
  std::string address_;
  MainWindow window_;
};

TEST_F(ServerWindow, isRememberedAndWatched) {
  EXPECT_EQ(settings::lastShop(), fromText(address_));
  watch().look();
  QTest::qWait(200);
  EXPECT_FALSE(watch().lost());
}

TEST_F(ServerWindow, keepsWhatIsTypedWhileTheServerIsSilent) {
  window_.room()->takeToBench("W06");
  auto& bench = window_.room()->bench().model();
  bench.setReading(0, 0, "10.02");
  ASSERT_TRUE(wait([this] { return !Shop::open(address_)->drafts()->empty(); }));
  silence();
  watch().look();
  ASSERT_TRUE(wait([this] { return watch().lost(); }));
  EXPECT_TRUE(says("does not answer"));
  bench.setReading(0, 1, "10.04");
  QTest::qWait(300);
  EXPECT_EQ(bench.draft().points[0].readings[1], "10.04");
  answerAgain();
  watch().look();
  ASSERT_TRUE(wait([this] { return !watch().lost(); }));
  EXPECT_FALSE(says("does not answer"));
  EXPECT_TRUE(says("answers again"));
  // What was typed meanwhile is in the shop, though no key was pressed since.
  EXPECT_TRUE(wait([this] {
    const auto drafts = Shop::open(address_)->drafts();
    return drafts && drafts->size() == 1 && drafts->front().draft.points[0].readings.size() >= 2 &&
           drafts->front().draft.points[0].readings[1] == "10.04";
  }));
}

}  // namespace
}  // namespace steadyturn
