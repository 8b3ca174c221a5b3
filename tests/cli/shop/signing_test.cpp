// Keys, signed checkpoints and issued papers from the command line, and what checks them without the program. Opening
// a key's seal takes its time (Argon2id), so one flow does much.
#include <gmock/gmock.h>

#include <cstdlib>

#include "temp_shop.h"

namespace steadyturn::test {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

class SignedShop : public NewShop {
 protected:
  void SetUp() override {
    addToolAndReference();
    ASSERT_EQ(record("2026-02-10", "as_found", "target,reading,unit\n20,20.1,N.m\n").status, 0);
    key = with(words, {"key", "make", "--holder", "Petra Quill", "--json"}).json().at("public_key");
  }
  static Setting knowing(const std::vector<std::string>& environment) {
    Setting setting;
    setting.environment = environment;
    return setting;
  }
  Answer with(const std::vector<std::string>& environment, std::vector<std::string> arguments) const {
    return onShop(shop, std::move(arguments), knowing(environment));
  }
  bool holds(const std::string& command) const {
    return std::system(("cd " + folder.path("") + " && " + command + " > said.txt 2>&1").c_str()) == 0;
  }

  const std::vector<std::string> words{"STURN_PASSPHRASE=correct horse"};
  std::string key;
};

TEST_F(SignedShop, IsCheckedByOtherProgramsToo) {
  const auto closed = with(words, {"ledger", "close", "--json"}).json();
  const Answer replaced = with({words.front(), "STURN_NEW_PASSPHRASE=battery staple"},
                               {"key", "replace", "--holder", "Noor Vale", "--json"});
  ASSERT_EQ(replaced.status, 0) << replaced.err;
  EXPECT_EQ(ask({"key", "show"}).size(), 2u);
  const auto exported = ask({"ledger", "export", folder.path("ledger.jsonl")});
  const std::string checkpoint = exported.at("checkpoint");
  const std::string python = "python3 " STEADYTURN_INDEPENDENT "/verify_ledger.py ledger.jsonl " + checkpoint;
  EXPECT_TRUE(holds(python + " --key " + key)) << folder.read("said.txt");
  EXPECT_THAT(folder.read("said.txt"), HasSubstr("3 signed statements"));
  EXPECT_FALSE(holds(python + " --key " + std::string(64, 'a')));
  // The public tools, with what `ledger close` printed.
  folder.file("statement", closed.at("statement"));
  const std::string openssl = STEADYTURN_INDEPENDENT "/with_openssl.sh " STEADYTURN_PROVING " " + key + " " +
                              closed.at("signature").get<std::string>() + " < statement";
  EXPECT_TRUE(holds(openssl)) << folder.read("said.txt");
  folder.file("statement", closed.at("statement").get<std::string>() + "\n");
  EXPECT_FALSE(holds(openssl)) << "another text is not signed";
  // A signature that was changed in the export.
  std::string ledger = folder.read("ledger.jsonl");
  const auto at = ledger.find(closed.at("signature").get<std::string>());
  ASSERT_NE(at, std::string::npos);
  ledger[at] = ledger[at] == '0' ? '1' : '0';
  folder.file("ledger.jsonl", ledger);
  EXPECT_FALSE(holds(python));
  EXPECT_THAT(folder.read("said.txt"), HasSubstr("the signature of entry"));
}

TEST_F(SignedShop, SignsCertificatesAndKnowsThemAgain) {
  const std::string paper = folder.path("certificate.csv");
  const Answer issued = with(words, {"report", "certificate", "1", "-o", paper, "--json"});
  ASSERT_EQ(issued.status, 0) << issued.err;
  EXPECT_TRUE(issued.json().at("entry").is_number());
  EXPECT_THAT(folder.read("certificate.csv"), HasSubstr("steadyturn checkpoint v1"));
  EXPECT_THAT(folder.read("certificate.csv"), HasSubstr(key));
  const auto known = ask({"verify", "--file", paper, "--key", key});
  EXPECT_TRUE(known.at("intact").get<bool>());
  EXPECT_EQ(known.at("file").at("issued").at(0).at("report"), "certificate");
  EXPECT_EQ(known.at("file").at("issued").at(0).at("of"), "1");
  EXPECT_EQ(known.at("signed").at("public_key"), key);
  EXPECT_EQ(run({"verify", "--file", folder.file("other.csv", "x")}).status, 1);
  EXPECT_EQ(run({"verify", "--file", folder.path("nowhere.csv")}).status, 66);
  EXPECT_EQ(run({"verify", "--key", "12"}).status, 65);
  // Without the passphrase a certificate is not signed, and says nothing of a signature.
  ASSERT_EQ(run({"report", "certificate", "1", "-o", paper}).status, 0);
  EXPECT_THAT(folder.read("certificate.csv"), Not(HasSubstr("steadyturn checkpoint v1")));
  EXPECT_EQ(with({"STURN_PASSPHRASE=wrong horse"}, {"report", "certificate", "1", "-o", paper}).status, 77);
}

TEST_F(NewShop, WithoutAKeySignsNothing) {
  Setting setting;
  setting.environment = {"STURN_PASSPHRASE=correct horse"};
  EXPECT_EQ(onShop(shop, {"ledger", "close"}, setting).status, 65);
  setting.environment = {"STURN_PASSPHRASE=short"};
  const Answer refused = onShop(shop, {"key", "make", "--holder", "Petra"}, setting);
  EXPECT_EQ(refused.status, 65);
  EXPECT_THAT(refused.err, HasSubstr("at least 8 characters"));
  EXPECT_EQ(ask({"key", "show"}).size(), 0u);
  EXPECT_EQ(ask({"verify"}).at("signed"), nullptr);
}

TEST_F(NewShop, APaperIsWrittenThoughItsEntryCanNotBe) {
  addToolAndReference();
  // Whatever keeps the store from taking it: here, a guard of somebody's own.
  const std::string command = "sqlite3 '" + shop +
                              "' \"CREATE TRIGGER full BEFORE INSERT ON issued_report BEGIN SELECT RAISE(ABORT, "
                              "'full'); END\"";
  ASSERT_EQ(std::system(command.c_str()), 0) << "needs the Debian package sqlite3";
  const Answer told = run({"report", "register", "-o", folder.path("tools.csv"), "--json"});
  EXPECT_EQ(told.status, 0) << told.err;
  EXPECT_TRUE(told.json().at("entry").is_null());
  EXPECT_THAT(told.err, HasSubstr("the ledger does not tell of it"));
  EXPECT_THAT(folder.read("tools.csv"), HasSubstr("T1"));
}

}  // namespace
}  // namespace steadyturn::test
