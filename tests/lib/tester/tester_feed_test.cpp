#include "tester_feed.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace steadyturn {
namespace {

using testing::ElementsAre;
using Time = TesterFeed::Time;

TesterFeed feed() { return TesterFeed(parsePattern("{mark} {value} {unit}", "PK").value(), Time(400)); }

std::vector<TesterEventKind> kinds(const std::vector<TesterEvent>& events) {
  std::vector<TesterEventKind> found;
  for (const auto& event : events) found.push_back(event.kind);
  return found;
}

TEST(TesterFeed, TellsReadingsFromRunningValuesAndNoise) {
  auto tester = feed();
  const auto events = tester.take("TR 5.0 Nm\r\nPK 20.1 Nm\r\n\xFF\xFE#\r\n", Time(0));
  EXPECT_THAT(kinds(events),
              ElementsAre(TesterEventKind::NoPeak, TesterEventKind::Reading, TesterEventKind::NotUnderstood));
  EXPECT_EQ(events[1].reading.value, "20.1");
  EXPECT_EQ(events[2].problems.front().field, "line");
}

TEST(TesterFeed, TakesASecondPressForOne) {
  auto tester = feed();
  EXPECT_THAT(kinds(tester.take("PK 20.1 Nm\n", Time(1000))), ElementsAre(TesterEventKind::Reading));
  EXPECT_THAT(kinds(tester.take("PK 20.1 Nm\n", Time(1300))), ElementsAre(TesterEventKind::SecondPress));
  // Held down: each within a moment of the one before.
  EXPECT_THAT(kinds(tester.take("PK 20.1 Nm\n", Time(1600))), ElementsAre(TesterEventKind::SecondPress));
  // The next pull gave the same figure.
  EXPECT_THAT(kinds(tester.take("PK 20.1 Nm\n", Time(2001))), ElementsAre(TesterEventKind::Reading));
  // Another figure, however soon.
  EXPECT_THAT(kinds(tester.take("PK 20.2 Nm\n", Time(2002))), ElementsAre(TesterEventKind::Reading));
}

TEST(TesterFeed, NeverMakesAReadingOfAHalfLine) {
  auto tester = feed();
  EXPECT_TRUE(tester.take("PK 20", Time(0)).empty());
  const auto gone = tester.unplugged();
  ASSERT_THAT(kinds(gone), ElementsAre(TesterEventKind::HalfLine));
  EXPECT_EQ(gone[0].line, "PK 20");
  EXPECT_TRUE(tester.unplugged().empty());
  // Plugged in again in the middle of a line.
  EXPECT_THAT(kinds(tester.take(".1 Nm\nPK 19.9 Nm\n", Time(5))),
              ElementsAre(TesterEventKind::NotUnderstood, TesterEventKind::Reading));
}

TEST(TesterFeed, TellsOfNoiseWithoutLineEnds) {
  auto tester = feed();
  EXPECT_TRUE(tester.take(std::string(5000, 'x'), Time(0)).empty());
  EXPECT_THAT(kinds(tester.take("\nPK 19.9 Nm\n", Time(1))),
              testing::UnorderedElementsAre(TesterEventKind::TooLong, TesterEventKind::Reading));
}

}  // namespace
}  // namespace steadyturn
