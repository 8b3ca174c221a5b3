// Proof and papers from the command line: verify, backup, the shop's own facts, due work as calendar, list and
// labels.
#include <gmock/gmock.h>

#include <cstdlib>

#include "temp_shop.h"

namespace steadyturn::test {
namespace {

using ::testing::HasSubstr;
using ::testing::StartsWith;

TEST_F(NewShop, AnUntouchedShopIsIntactAndGoesOnFromItsOwnCheckpoint) {
  addToolAndReference();
  const auto before = ask({"verify"});
  EXPECT_TRUE(before.at("intact").get<bool>());
  EXPECT_EQ(before.at("faults").size(), 0u);
  ASSERT_EQ(before.at("head").get<std::string>().size(), 64u);
  const std::string checkpoint =
      std::to_string(before.at("entries").get<int>()) + ":" + before.at("head").get<std::string>();
  record("2026-02-10", "as_found", "target,reading,unit\n20,20.1,N.m\n");
  const auto after = ask({"verify", "--checkpoint", checkpoint});
  EXPECT_TRUE(after.at("intact").get<bool>());
  EXPECT_GT(after.at("entries"), before.at("entries"));
}

TEST_F(NewShop, AChangedReadingIsFoundWithStatusOne) {
  addToolAndReference();
  record("2026-02-10", "as_found", "target,reading,unit\n20,20.1,N.m\n");
  // Somebody who knows the file well enough to remove the guard rail first.
  const std::string command =
      "sqlite3 '" + shop +
      "' \"SELECT 'DROP TRIGGER ' || name || ';' FROM sqlite_master WHERE type = 'trigger' AND "
      "tbl_name = 'check_point'\" | sqlite3 '" +
      shop + "' && sqlite3 '" + shop + "' \"UPDATE check_point SET readings = replace(readings, '20.1', '20.0')\"";
  ASSERT_EQ(std::system(command.c_str()), 0) << "needs the Debian package sqlite3";
  const Answer answer = run({"verify", "--json"});
  EXPECT_EQ(answer.status, 1);
  EXPECT_FALSE(answer.json().at("intact").get<bool>());
  EXPECT_THAT(answer.json().at("faults").at(0).at("what").get<std::string>(), HasSubstr("check 1"));
  EXPECT_EQ(run({"verify"}).status, 1);
}

TEST_F(NewShop, ACheckpointOfAnotherShopIsDamage) {
  addToolAndReference();
  EXPECT_EQ(run({"verify", "--checkpoint", "1:" + std::string(64, 'a')}).status, 1);
  EXPECT_EQ(run({"verify", "--checkpoint", "1"}).status, 65);
  EXPECT_EQ(run({"verify", "--checkpoint", "one:" + std::string(64, 'a')}).status, 65);
}

TEST_F(NewShop, ABackupIsAShopOfTheSameHead) {
  addToolAndReference();
  const auto made = ask({"backup", folder.path("copy.st")});
  const auto copy = onShop(folder.path("copy.st"), {"verify", "--json"}).json();
  EXPECT_EQ(made.at("checkpoint"),
            std::to_string(copy.at("entries").get<int>()) + ":" + copy.at("head").get<std::string>());
  EXPECT_EQ(run({"backup", folder.path("copy.st")}).status, 73) << "no file is written over";
}

TEST_F(NewShop, SaysAndChangesWhoItIs) {
  ask({"shop", "set", "--name", "Depot North", "--country", "DE", "--interval-days", "180", "--rule", "guarded"});
  const auto facts = ask({"shop", "show"});
  EXPECT_EQ(facts.at("name"), "Depot North");
  EXPECT_EQ(facts.at("interval_days"), 180);
  EXPECT_EQ(facts.at("decision_rule"), "guarded");
  EXPECT_EQ(run({"shop", "set", "--name", "Other", "--country", "Germany"}).status, 65);
  EXPECT_EQ(ask({"shop", "show"}).at("name"), "Depot North") << "both or neither";
}

TEST_F(DemoShop, WritesDueWorkAsACalendar) {
  const auto made = ask({"due", "--within", "60", "--ics", folder->path("due.ics")});
  const std::string calendar = folder->read("due.ics");
  EXPECT_THAT(calendar, StartsWith("BEGIN:VCALENDAR\r\n"));  // RFC 5545, 3.4
  EXPECT_THAT(calendar, HasSubstr("W15"));
  std::size_t events = 0;
  for (std::size_t at = 0; (at = calendar.find("BEGIN:VEVENT", at)) != std::string::npos; ++at) ++events;
  EXPECT_EQ(made.at("events"), events);
}

TEST_F(DemoShop, WritesPapersAboutManyTools) {
  for (const char* what : {"due", "register", "labels"}) {
    const std::string file = std::string(what) + ".pdf";
    ASSERT_EQ(run({"report", what, "-o", folder->path(file)}).status, 0) << what;
    EXPECT_THAT(folder->read(file), StartsWith("%PDF-")) << what;
  }
  EXPECT_EQ(run({"report", "labels", "W06", "--single", "-o", folder->path("one.pdf")}).status, 0);
  EXPECT_EQ(run({"report", "labels", "W99", "-o", folder->path("none.pdf")}).status, 65);
  EXPECT_EQ(run({"report", "labels", "-o", folder->path("labels.csv")}).status, 64);
}

}  // namespace
}  // namespace steadyturn::test
