#include "words.h"

#include <gtest/gtest.h>

#include "exit_status.h"

namespace steadyturn {
namespace {

TEST(Words, NameTheFieldWhatWasFoundAndWhatIsAccepted) {
  EXPECT_EQ(words({.field = "points[0].target.unit", .found = "Nx", .accepted = "N.m, cN.m"}),
            R"(points[0].target.unit: found "Nx"; accepted: N.m, cN.m)");
}

TEST(Words, SayTheLineOfAFile) {
  EXPECT_EQ(words({.field = "reading", .found = "1O.5", .accepted = "a number", .line = 17}),
            R"(line 17, reading: found "1O.5"; accepted: a number)");
}

TEST(Words, SayThatNothingWasFound) {
  EXPECT_EQ(words({.field = "tool.max", .accepted = "a torque"}), "tool.max: found nothing; accepted: a torque");
}

TEST(Words, StayOnOneHarmlessLine) {
  const std::string line = words({.field = "tool", .found = "a\nb\x1b[31m\xff", .accepted = "text"});
  for (const char c : line) EXPECT_FALSE(c == '\n' || c == '\x1b' || c == '\xff');
}

TEST(Words, DoNotRepeatAVeryLongText) {
  EXPECT_LT(words({.field = "reading", .found = std::string(100'000, '1'), .accepted = "a number"}).size(), 200u);
}

// The statuses of the command-line contract (numbers of sysexits.h).
TEST(ExitStatus, FollowsTheKindOfTheFirstProblem) {
  const auto status = [](ProblemKind kind) {
    return exitStatusFor({{.kind = kind}, {.kind = ProblemKind::BadInput}});
  };
  EXPECT_EQ(status(ProblemKind::BadInput), 65);
  EXPECT_EQ(status(ProblemKind::NotFound), 65);
  EXPECT_EQ(status(ProblemKind::Conflict), 65);
  EXPECT_EQ(status(ProblemKind::FileMissing), 66);
  EXPECT_EQ(status(ProblemKind::Unavailable), 69);
  EXPECT_EQ(status(ProblemKind::CannotCreate), 73);
  EXPECT_EQ(status(ProblemKind::NotPermitted), 77);
  EXPECT_EQ(status(ProblemKind::Cancelled), 130);
}

}  // namespace
}  // namespace steadyturn
