// Accounts: who is let in, who may write, what the ledger tells of it.
#include <QProcess>
#include <chrono>
#include <thread>

#include "people_fixture.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;
using testing::Not;

std::string wholeLedger(const Shop& shop) {
  std::string all;
  EXPECT_TRUE(walkLedger(shop, [&](std::string_view entry) {
    all.append(entry).push_back('\n');
    return true;
  }));
  return all;
}

JobDraft job(const std::string& by) {
  return {.job = "J1",
          .vehicle = "van",
          .service = {},
          .fasteners = {},
          .date = Date(std::chrono::days(20500)),
          .by = by};
}

TEST_F(PeopleTest, AShopWithoutAccountsIsOpen) {
  EXPECT_FALSE(hasUsers(shop_));
  EXPECT_TRUE(users(shop_)->empty());
  for (const Act act : allActs) EXPECT_TRUE(may(shop_, act)) << describe(act);
  EXPECT_TRUE(shop_.addTool(tool("T1")));
}

TEST_F(PeopleTest, TheFirstAccountIsALeadsAndClosesTheShop) {
  EXPECT_EQ(kindOf(addUser(shop_, "Petra", AccountRole::Technician, "2468").error()), ProblemKind::BadInput);
  EXPECT_FALSE(hasUsers(shop_));
  const auto added = addUser(shop_, "Nora", AccountRole::Lead, leadPin);
  ASSERT_TRUE(added);
  EXPECT_EQ(added->recoveryCode.size(), 24U);
  EXPECT_TRUE(hasUsers(shop_));
  const auto refused = shop_.addTool(tool("T1"));
  ASSERT_FALSE(refused);
  EXPECT_EQ(kindOf(refused.error()), ProblemKind::NotPermitted);
  EXPECT_THAT(refused.error().front().accepted, HasSubstr("--as"));
  EXPECT_TRUE(shop_.tools()->empty());
  EXPECT_EQ(kindOf(addUser(shop_, "Mallory", AccountRole::Lead, "12345678").error()), ProblemKind::NotPermitted);
}

TEST_F(PeopleTest, WhoeverIsSignedInDoesIt) {
  closeShop();
  ASSERT_TRUE(signIn(shop_, "nora", leadPin)) << "capitals are no matter";
  EXPECT_EQ(signedIn(shop_)->name, "Nora");
  ASSERT_TRUE(shop_.addTool(tool("T1")));
  EXPECT_THAT(wholeLedger(shop_), HasSubstr(R"("kind":"tool")"));
  EXPECT_THAT(wholeLedger(shop_), HasSubstr(R"("who":"Nora")"));
  signOut(shop_);
  ASSERT_TRUE(signIn(shop_, "Petra", "2468"));
  EXPECT_EQ(kindOf(shop_.addTool(tool("T2")).error()), ProblemKind::NotPermitted);
  ASSERT_TRUE(shop_.holdTool("T1", "fell"));
  ASSERT_TRUE(shop_.openJob(job("somebody else")));
  EXPECT_EQ(shop_.jobSheet("J1")->job.opened->by, "Petra");
  EXPECT_TRUE(verifyShop(shop_)->intact());
}

TEST_F(PeopleTest, AnotherConnectionActsForTheSamePerson) {
  closeShop();
  ASSERT_TRUE(signIn(shop_, "Petra", "2468"));
  auto beside = Shop::open(shop_.session()).value();
  EXPECT_EQ(signedIn(beside)->name, "Petra");
  EXPECT_TRUE(may(beside, Act::RecordTightening));
  EXPECT_FALSE(may(beside, Act::AddTool));
  signOut(shop_);
  beside.actAs(shop_.session());
  EXPECT_FALSE(may(beside, Act::RecordTightening));
}

TEST_F(PeopleTest, AClosedAccountIsShutAtOnce) {
  closeShop();
  ASSERT_TRUE(signIn(shop_, "Petra", "2468"));
  auto office = Shop::open(path_).value();
  ASSERT_TRUE(signIn(office, "Nora", leadPin));
  ASSERT_TRUE(closeUser(office, "Petra"));
  EXPECT_FALSE(signedIn(shop_));
  EXPECT_EQ(kindOf(shop_.openJob(job({})).error()), ProblemKind::NotPermitted);
  EXPECT_FALSE(signIn(shop_, "Petra", "2468"));
  EXPECT_EQ(kindOf(addUser(office, "petra", AccountRole::Lead, "24682468").error()), ProblemKind::Conflict);
  EXPECT_FALSE(users(office)->at(1).open);
}

TEST_F(PeopleTest, ARoleChangedElsewhereCountsAtTheNextWrite) {
  closeShop();
  ASSERT_TRUE(signIn(shop_, "Petra", "2468"));
  auto office = Shop::open(path_).value();
  ASSERT_TRUE(signIn(office, "Nora", leadPin));
  ASSERT_TRUE(changeRole(office, "Petra", AccountRole::Lead));
  EXPECT_TRUE(shop_.addTool(tool("T1")));
  EXPECT_EQ(kindOf(changeRole(office, "Petra", AccountRole::Lead).error()), ProblemKind::Conflict);
}

TEST_F(PeopleTest, AShopKeepsALead) {
  closeShop();
  ASSERT_TRUE(signIn(shop_, "Nora", leadPin));
  EXPECT_EQ(kindOf(closeUser(shop_, "Nora").error()), ProblemKind::Conflict);
  EXPECT_EQ(kindOf(changeRole(shop_, "Nora", AccountRole::Auditor).error()), ProblemKind::Conflict);
  ASSERT_TRUE(changeRole(shop_, "Petra", AccountRole::Lead));
  EXPECT_TRUE(closeUser(shop_, "Nora"));
  EXPECT_EQ(kindOf(shop_.addTool(tool("T1")).error()), ProblemKind::NotPermitted) << "one's own account was closed";
}

TEST_F(PeopleTest, OnesOwnPinIsOnesOwnToChange) {
  closeShop();
  ASSERT_TRUE(signIn(shop_, "Petra", "2468"));
  ASSERT_TRUE(changePin(shop_, "Petra", "8642"));
  EXPECT_EQ(kindOf(changePin(shop_, "Olaf", "8642").error()), ProblemKind::NotPermitted);
  EXPECT_FALSE(signIn(shop_, "Petra", "2468"));
  EXPECT_TRUE(signIn(shop_, "Petra", "8642"));
  ASSERT_TRUE(signIn(shop_, "Olaf", "1357"));
  EXPECT_EQ(kindOf(changePin(shop_, "Olaf", "8642").error()), ProblemKind::NotPermitted)
      << "an auditor writes nothing";
  ASSERT_TRUE(signIn(shop_, "Nora", leadPin));
  EXPECT_TRUE(changePin(shop_, "Olaf", "8642"));
  EXPECT_FALSE(changePin(shop_, "Olaf", "123"));
  EXPECT_FALSE(changePin(shop_, "Olaf", std::string(201, 'x')));
}

TEST_F(PeopleTest, WrongTriesWaitForTheRightOneToo) {
  closeShop();
  for (int i = 0; i < 3; ++i) EXPECT_FALSE(signIn(shop_, "Petra", "0000"));
  // Kept in the shop: another program does not help.
  auto other = Shop::open(path_).value();
  const auto early = signIn(other, "Petra", "2468");
  ASSERT_FALSE(early);
  EXPECT_EQ(kindOf(early.error()), ProblemKind::NotPermitted);
  EXPECT_THAT(early.error().front().accepted, HasSubstr("try again in"));
  EXPECT_TRUE(signIn(other, "Nora", leadPin)) << "the others' accounts are not shut by it";
  std::this_thread::sleep_for(std::chrono::milliseconds(2100));
  EXPECT_TRUE(signIn(other, "Petra", "2468"));
  EXPECT_FALSE(signIn(other, "Petra", "0000"));
  EXPECT_TRUE(signIn(other, "Petra", "2468")) << "the count began anew";
}

TEST_F(PeopleTest, TheRecoveryCodeIsTheWayBackOnceAndStandsInTheLedger) {
  closeShop();
  EXPECT_EQ(kindOf(recoverLead(shop_, "Nora", "AAAA-BBBB-CCCC-DDDD-EEEE", "new passphrase").error()),
            ProblemKind::NotPermitted);
  EXPECT_EQ(kindOf(recoverLead(shop_, "Petra", recoveryCode_, "new passphrase").error()), ProblemKind::Conflict);
  std::string typed = recoveryCode_;
  for (char& c : typed) c = c == '-' ? ' ' : static_cast<char>(std::tolower(c));
  const auto next = recoverLead(shop_, "Nora", typed, "new passphrase");
  ASSERT_TRUE(next);
  EXPECT_NE(*next, recoveryCode_);
  EXPECT_FALSE(recoverLead(shop_, "Nora", recoveryCode_, "another passphrase")) << "a code is spent by its use";
  EXPECT_FALSE(signIn(shop_, "Nora", leadPin));
  EXPECT_TRUE(signIn(shop_, "Nora", "new passphrase"));
  EXPECT_THAT(wholeLedger(shop_), HasSubstr(R"("change":"recovered")"));
  const auto renewed = makeRecoveryCode(shop_);
  ASSERT_TRUE(renewed);
  EXPECT_FALSE(recoverLead(shop_, "Nora", *next, "another passphrase"));
  EXPECT_TRUE(verifyShop(shop_)->intact());
}

TEST_F(PeopleTest, TheLedgerHoldsNothingToGuessFrom) {
  closeShop();
  const auto ledger = wholeLedger(shop_);
  EXPECT_THAT(ledger, Not(HasSubstr("argon2")));
  EXPECT_THAT(ledger, Not(HasSubstr("2468")));
  EXPECT_THAT(ledger, Not(HasSubstr(leadPin)));
  EXPECT_THAT(ledger, Not(HasSubstr(recoveryCode_)));
}

TEST_F(PeopleTest, APinSlippedInPastTheProgramIsFoundByVerify) {
  closeShop();
  // Olaf's secret takes the place of Nora's: whoever knows Olaf's PIN would lead.
  QProcess sqlite;
  sqlite.start("sqlite3",
               {QString::fromStdString(path_),
                "UPDATE account_secret SET hash = (SELECT hash FROM account_secret WHERE account = 'Olaf') "
                "WHERE account = 'Nora'"});
  ASSERT_TRUE(sqlite.waitForFinished()) << "needs the Debian package sqlite3";
  ASSERT_EQ(sqlite.exitCode(), 0);
  const auto proof = verifyShop(shop_);
  ASSERT_TRUE(proof);
  ASSERT_EQ(proof->faults.size(), 1U);
  EXPECT_THAT(proof->faults.front().what, HasSubstr("account Nora"));
}

TEST_F(PeopleTest, NamesAreWithinReason) {
  for (const std::string& name : {std::string(), std::string("  "), std::string(201, 'x'), std::string("a\nb"),
                                  std::string("a\0b", 3), std::string("\xff")}) {
    EXPECT_FALSE(addUser(shop_, name, AccountRole::Lead, leadPin)) << name;
  }
  EXPECT_TRUE(addUser(shop_, "Sœur Núria 👩‍🔧", AccountRole::Lead, "पासफ़्रेज़"));
  EXPECT_TRUE(signIn(shop_, "Sœur Núria 👩‍🔧", "पासफ़्रेज़"));
}

}  // namespace
}  // namespace steadyturn
