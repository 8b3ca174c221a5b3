// Proof and papers from the command line: verify, backup, the shop's own facts, due work as calendar, list and
// labels.
#include <gmock/gmock.h>

#include <cstdlib>
#include <fstream>

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

// What shares no code with the program agrees with it: Python's own library, and coreutils as db/proof/PROVING.md
// tells people to use them.
class ExportedLedger : public DemoShop {
 protected:
  void SetUp() override {
    DemoShop::SetUp();
    checkpoint = ask({"ledger", "export", ledger}).at("checkpoint").get<std::string>();
    ASSERT_EQ(run({"export", "checks", checks}).status, 0);
    const Answer proven = run({"ledger", "prove", "42", "--json"});
    ASSERT_EQ(proven.status, 0);
    std::ofstream(proof) << proven.out;
  }
  int provenByPython() const {
    return std::system(("python3 " STEADYTURN_INDEPENDENT "/verify_ledger.py " + ledger + " " + checkpoint +
                        " --checks " + checks + " --proof " + proof + " > " + folder->path("said.txt"))
                           .c_str());
  }
  std::string said() const { return folder->read("said.txt"); }
  void replaceIn(const std::string& file, const std::string& what, const std::string& by) const {
    std::string text = folder->read(file);
    const auto at = text.find(what);
    ASSERT_NE(at, std::string::npos);
    text.replace(at, what.size(), by);
    std::ofstream(folder->path(file), std::ios::binary) << text;
  }

  std::string ledger = folder->path("ledger.jsonl"), checks = folder->path("checks.csv"),
              proof = folder->path("proof.json"), checkpoint;
};

TEST_F(ExportedLedger, IsProvenByAnotherProgram) {
  EXPECT_EQ(provenByPython(), 0) << said();
  EXPECT_THAT(said(), HasSubstr("entries hold"));
}

TEST_F(ExportedLedger, ThatWasChangedIsFoundByAnotherProgram) {
  replaceIn("ledger.jsonl", "as_found", "as_left");
  EXPECT_NE(provenByPython(), 0);
  EXPECT_THAT(said(), HasSubstr("do not have the checkpoint's root"));
}

TEST_F(ExportedLedger, ThatLostItsTailIsFoundByAnotherProgram) {
  std::string text = folder->read("ledger.jsonl");
  text.erase(text.rfind('\n', text.size() - 2) + 1);
  std::ofstream(ledger, std::ios::binary) << text;
  EXPECT_NE(provenByPython(), 0);
  EXPECT_THAT(said(), HasSubstr("the checkpoint counted"));
}

TEST_F(ExportedLedger, AReadingThatTheRecordsAloneShowIsFoundByAnotherProgram) {
  replaceIn("checks.csv", ",1.99,", ",1.98,");
  EXPECT_NE(provenByPython(), 0);
  EXPECT_THAT(said(), HasSubstr("a record shows a reading that the ledger does not tell of"));
}

TEST_F(ExportedLedger, LeadsFromACheckToTheCheckpointWithCoreutils) {
  const auto proven = ask({"ledger", "prove", "42"});
  const std::string size = checkpoint.substr(0, checkpoint.find(':'));
  std::string command = STEADYTURN_INDEPENDENT "/with_coreutils.sh " STEADYTURN_PROVING " " + ledger + " " +
                        std::to_string(proven.at("sequence").get<int>()) + " " + size;
  for (const auto& hash : proven.at("path")) command += " " + hash.get<std::string>();
  ASSERT_EQ(std::system((command + " > " + folder->path("root.txt")).c_str()), 0);
  EXPECT_EQ(size + ":" + folder->read("root.txt"), checkpoint + "\n");
}

TEST_F(DemoShop, ACertificateCarriesItsPlaceInTheLedger) {
  const auto proven = ask({"ledger", "prove", "42"});  // before: that the paper was issued is an entry, too
  ASSERT_EQ(run({"report", "certificate", "42", "-o", folder->path("c.csv")}).status, 0);
  const std::string text = folder->read("c.csv");
  EXPECT_THAT(text, HasSubstr(proven.at("leaf").get<std::string>()));
  const std::string checkpoint = proven.at("checkpoint").get<std::string>();
  EXPECT_THAT(text, HasSubstr("Checkpoint," + checkpoint));
  for (const auto& hash : proven.at("path")) EXPECT_THAT(text, HasSubstr(hash.get<std::string>()));
  EXPECT_EQ(run({"verify", "--checkpoint", "STURN:L:" + checkpoint}).status, 0) << "as a scanner types the symbol";
}

}  // namespace
}  // namespace steadyturn::test
