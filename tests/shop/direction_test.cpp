// Each direction of use apart (ISO 6789-1:2017, from memory).
#include "date_of.h"
#include "wrench_shop.h"

namespace steadyturn {
namespace {

class Directions : public test::WrenchShop {
 protected:
  void SetUp() override {
    WrenchShop::SetUp();
    addTool("T");
    Fastener fastener;
    fastener.id = "F";
    fastener.component = "drain plug";
    fastener.target = 60;
    fastener.low = 57;
    fastener.high = 63;
    EXPECT_TRUE(shop.addFastener(fastener));
  }

  // Every reading `percent` off, give or take the last digit.
  Result<Check> record(Date date, Direction direction, double percent, Phase phase = Phase::AsFound) {
    CheckDraft draft;
    draft.tool = "T";
    draft.reference = "R";
    draft.date = date;
    draft.direction = direction;
    draft.phase = phase;
    for (const double target : {20.0, 60.0, 100.0}) {
      DraftPoint point{.target = writeNumber(target), .readings = {}};
      for (const double scatter : {-0.1, 0.0, 0.1, -0.1, 0.1})
        point.readings.push_back(writeRounded(target / (1 + (percent + scatter) / 100), 6));
      draft.points.push_back(point);
    }
    return shop.recordCheck(draft);
  }

  void recordClockwiseYears() {
    double percent = 0.2;
    for (const int year : {2022, 2023, 2024, 2025}) {
      ASSERT_TRUE(record(day(year, 3, 1), Direction::Clockwise, percent));
      percent += 0.3;
    }
  }
};

TEST_F(Directions, AreTwoChecksOfOneDay) {
  ASSERT_TRUE(record(day(2025, 3, 1), Direction::Clockwise, 0));
  EXPECT_TRUE(record(day(2025, 3, 1), Direction::Counterclockwise, 0));
  const auto again = record(day(2025, 3, 1), Direction::Counterclockwise, 0);
  ASSERT_FALSE(again);
  EXPECT_EQ(again.error().front().kind, ProblemKind::Conflict);
  EXPECT_NE(again.error().front().found.find("counterclockwise"), std::string::npos);
}

TEST_F(Directions, DriftInSeriesOfTheirOwn) {
  recordClockwiseYears();
  const auto before = shop.drift("T", day(2025, 6, 1)).value();
  for (const int year : {2022, 2023, 2024, 2025})
    ASSERT_TRUE(record(day(year, 3, 1), Direction::Counterclockwise, -2));
  const auto after = shop.drift("T", day(2025, 6, 1)).value();
  ASSERT_EQ(before.series.size(), 3u);
  ASSERT_EQ(after.series.size(), 6u);
  for (std::size_t i = 0; i < before.series.size(); ++i) {
    const auto& clockwise = after.series[2 * i];
    const auto& counter = after.series[2 * i + 1];
    EXPECT_EQ(clockwise.direction, Direction::Clockwise);
    EXPECT_EQ(counter.direction, Direction::Counterclockwise);
    EXPECT_EQ(clockwise.target, counter.target);
    EXPECT_EQ(clockwise.drift.slopePercentPerYear, before.series[i].drift.slopePercentPerYear);
    EXPECT_EQ(clockwise.drift.predictedPercent, before.series[i].drift.predictedPercent);
    EXPECT_NEAR(*counter.drift.predictedPercent, -2, 0.01);
  }
}

TEST_F(Directions, TheClockwiseSeriesAnswerForCommonThreads) {
  recordClockwiseYears();
  const auto before = shop.choose("F", day(2025, 6, 1)).value();
  for (const int year : {2022, 2023, 2024, 2025})
    ASSERT_TRUE(record(day(year, 3, 1), Direction::Counterclockwise, -2));
  const auto after = shop.choose("F", day(2025, 6, 1)).value();
  ASSERT_EQ(before.choice.options.size(), 1u);
  ASSERT_EQ(after.choice.options.size(), 1u);
  EXPECT_EQ(after.choice.options[0].setting.value, before.choice.options[0].setting.value);
  EXPECT_EQ(after.choice.options[0].delivery.probabilityWithin, before.choice.options[0].delivery.probabilityWithin);
}

TEST_F(Directions, AToolCheckedOnlyCounterclockwiseIsChosenByThat) {
  for (const int year : {2022, 2023, 2024, 2025})
    ASSERT_TRUE(record(day(year, 3, 1), Direction::Counterclockwise, 0.5));
  EXPECT_EQ(shop.choose("F", day(2025, 6, 1))->choice.options.size(), 1u);
}

TEST_F(Directions, AFailureOneWayStandsUntilThatWayPasses) {
  ASSERT_TRUE(record(day(2025, 1, 1), Direction::Counterclockwise, 0));
  ASSERT_TRUE(record(day(2025, 3, 1), Direction::Counterclockwise, 7));
  ASSERT_TRUE(record(day(2025, 3, 1), Direction::Clockwise, 0));
  EXPECT_EQ(shop.overview(day(2025, 4, 1))->front().standing, Standing::Failed);
  const auto recall = shop.recall("T").value();
  EXPECT_EQ(recall.foundBad, day(2025, 3, 1));
  EXPECT_EQ(recall.lastGood, day(2025, 1, 1));
  ASSERT_TRUE(shop.holdTool("T", "failed counterclockwise"));
  EXPECT_FALSE(shop.releaseTool("T", "it passes clockwise"));
  ASSERT_TRUE(record(day(2025, 3, 1), Direction::Counterclockwise, 0, Phase::AsLeft));
  EXPECT_TRUE(shop.releaseTool("T", "adjusted"));
}

}  // namespace
}  // namespace steadyturn
