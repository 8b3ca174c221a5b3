#include "problem_text.h"

#include <gtest/gtest.h>

#include "text.h"

namespace steadyturn {
namespace {

TEST(ProblemText, saysFieldWhatWasFoundAndWhatIsAccepted) {
  const Problem problem{.field = "reading", .found = "1O.5", .accepted = "a number such as 10.5"};
  const QString text = wordProblem(problem);
  EXPECT_TRUE(text.contains("1O.5")) << toText(text);
  EXPECT_TRUE(text.contains("a number such as 10.5")) << toText(text);
  EXPECT_TRUE(text.startsWith("Reading")) << toText(text);
}

TEST(ProblemText, namesTheLineOfAFile) {
  const Problem problem{.field = "unit", .found = "Nmm", .accepted = "N.m", .line = 17};
  EXPECT_TRUE(wordProblem(problem).startsWith("Line 17")) << toText(wordProblem(problem));
}

TEST(ProblemText, countsWhatItDoesNotShow) {
  const Problems many(10, Problem{.field = "date", .found = "2026-02-30", .accepted = "a date that exists"});
  EXPECT_TRUE(wordProblems(many).contains("7 more")) << toText(wordProblems(many));
}

TEST(ProblemText, saysWhatIsNotPermittedAndWhoMay) {
  EXPECT_EQ(wordProblem({.kind = ProblemKind::NotPermitted,
                         .field = {},
                         .found = "adding a tool",
                         .accepted = "a lead may; Petra is a technician"}),
            "Not permitted (adding a tool): a lead may; Petra is a technician.");
}

TEST(ProblemText, isNeverEmpty) {
  for (const ProblemKind kind :
       {ProblemKind::BadInput, ProblemKind::NotFound, ProblemKind::Conflict, ProblemKind::FileMissing,
        ProblemKind::Unavailable, ProblemKind::CannotCreate, ProblemKind::NotPermitted, ProblemKind::Cancelled}) {
    EXPECT_GT(wordProblem({.kind = kind, .field = "tool", .found = "x", .accepted = "y"}).size(), 5);
  }
}

}  // namespace
}  // namespace steadyturn
