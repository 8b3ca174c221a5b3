#include "sql_script.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace steadyturn {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

std::vector<std::string> split(std::string_view script) {
  std::vector<std::string> trimmed;
  for (const auto statement : splitStatements(script)) {
    const auto first = statement.find_first_not_of(" \n");
    trimmed.emplace_back(statement.substr(first, statement.find_last_not_of(" \n") - first + 1));
  }
  return trimmed;
}

TEST(SqlScript, SplitsAtSemicolons) { EXPECT_THAT(split("A; B;C"), ElementsAre("A", "B", "C")); }

TEST(SqlScript, LeavesOutNothingness) {
  EXPECT_THAT(split(""), IsEmpty());
  EXPECT_THAT(split(" ;; -- only; words\n/* and; these */ ;"), IsEmpty());
}

TEST(SqlScript, RespectsQuotes) {
  EXPECT_THAT(split("SELECT 'a;''b', \"c;d\", `e;`, [f;g]; X"),
              ElementsAre("SELECT 'a;''b', \"c;d\", `e;`, [f;g]", "X"));
}

TEST(SqlScript, RespectsComments) {
  EXPECT_THAT(split("A -- it's; no end\n, B; C /* ; ' */ D"), ElementsAre("A -- it's; no end\n, B", "C /* ; ' */ D"));
}

TEST(SqlScript, KeepsATriggerWhole) {
  EXPECT_THAT(split("create temp trigger t after insert on x begin\n update y set a = case when 1 then 2 end; "
                    "select 'end'; end; Z"),
              ElementsAre("create temp trigger t after insert on x begin\n update y set a = case when 1 then 2 end; "
                          "select 'end'; end",
                          "Z"));
}

TEST(SqlScript, ATransactionsBeginEndsAtOnce) {
  EXPECT_THAT(split("BEGIN; A; END;"), ElementsAre("BEGIN", "A", "END"));
}

TEST(SqlScript, AnUnfinishedQuoteEndsWithTheScript) { EXPECT_THAT(split("A 'b; c"), ElementsAre("A 'b; c")); }

// PostgreSQL 15, 4.1.2.4.
TEST(SqlScript, DollarsQuoteAFunctionsBody) {
  EXPECT_THAT(split("CREATE FUNCTION f() AS $$ BEGIN a; b; END $$; X"),
              ElementsAre("CREATE FUNCTION f() AS $$ BEGIN a; b; END $$", "X"));
  EXPECT_THAT(split("DO $x$ a; $$ b; $x$; Y; SELECT $1; Z"),
              ElementsAre("DO $x$ a; $$ b; $x$", "Y", "SELECT $1", "Z"));
}

TEST(SqlScript, AColumnNamedTriggerIsNoTrigger) {
  EXPECT_THAT(split("CREATE TABLE x (trigger TEXT, begin TEXT); Y"),
              ElementsAre("CREATE TABLE x (trigger TEXT, begin TEXT)", "Y"));
}

}  // namespace
}  // namespace steadyturn
