// What roles may do, and how long wrong tries wait.
#include <gtest/gtest.h>

#include <map>

#include "permission.h"

namespace steadyturn {
namespace {

using std::chrono::seconds;

// The division of work as README.md tells it: the quality lead answers for everything, the technician tightens and
// takes a doubtful wrench out of use, the auditor changes nothing.
TEST(Permission, IsTheDivisionOfWork) {
  const std::map<Act, bool> technician{
      {Act::ManageUsers, false},   {Act::ChangeOwnPin, true},     {Act::ChangeShop, false},
      {Act::AddTool, false},       {Act::HoldTool, true},         {Act::ReleaseTool, false},
      {Act::RetireTool, false},    {Act::GroupTool, false},       {Act::AddReference, false},
      {Act::RecordCheck, false},   {Act::CorrectCheck, false},    {Act::RecordSetup, false},
      {Act::EnterFastener, false}, {Act::ApproveFastener, false}, {Act::ChangeSynonyms, false},
      {Act::SetService, false},    {Act::WorkJob, true},          {Act::RecordTightening, true},
      {Act::Import, false},        {Act::RestoreShop, false},     {Act::ChangeKeys, false},
      {Act::SignLedger, false},    {Act::IssuePaper, true},       {Act::DecideRecall, false}};
  EXPECT_EQ(technician.size(), allActs.size());
  for (const Act act : allActs) {
    EXPECT_TRUE(permits(AccountRole::Lead, act)) << describe(act);
    EXPECT_EQ(permits(AccountRole::Technician, act), technician.at(act)) << describe(act);
    EXPECT_FALSE(permits(AccountRole::Auditor, act)) << describe(act);
  }
}

TEST(Roles, AreReadAsTheyAreWritten) {
  for (const AccountRole role : allAccountRoles) EXPECT_EQ(parseRole(writeRole(role)), role);
  for (const AccountChange change : allAccountChanges)
    EXPECT_EQ(parseAccountChange(writeAccountChange(change)), change);
  EXPECT_FALSE(parseRole("boss"));
  EXPECT_FALSE(parseRole(""));
}

// NIST SP 800-63B, 5.2.2 (from memory): wrong tries in a row are limited to at most 100. Guessing a four-digit PIN
// by 10 000 tries takes months here.
TEST(Waiting, GrowsAndStaysBounded) {
  for (const int slips : {0, 1, 2}) EXPECT_EQ(waitAfter(slips), seconds(0));
  EXPECT_EQ(waitAfter(3), seconds(2));
  EXPECT_EQ(waitAfter(4), seconds(4));
  seconds total(0);
  for (int failures = 1; failures < 10'000; ++failures) {
    EXPECT_GE(waitAfter(failures), waitAfter(failures - 1));
    total += waitAfter(failures);
  }
  EXPECT_EQ(waitAfter(2'000'000'000), seconds(900));
  EXPECT_GT(total, std::chrono::days(90));
}

}  // namespace
}  // namespace steadyturn
