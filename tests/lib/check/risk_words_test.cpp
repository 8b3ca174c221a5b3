#include "risk_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace steadyturn {
namespace {

using ::testing::EndsWith;
using ::testing::HasSubstr;

TEST(ChanceInWords, RoundsAsPeopleWeigh) {
  EXPECT_EQ(chanceInWords(0), "less than 1 in 10,000");
  EXPECT_EQ(chanceInWords(0.00009), "less than 1 in 10,000");
  EXPECT_EQ(chanceInWords(0.0001), "about 1 in 10,000");
  EXPECT_EQ(chanceInWords(1 / 2345.0), "about 1 in 2,300");
  EXPECT_EQ(chanceInWords(1 / 374.0), "about 1 in 370");
  EXPECT_EQ(chanceInWords(0.0228), "about 1 in 45");  // 1 in 43.9
  EXPECT_EQ(chanceInWords(0.1), "about 1 in 10");
  EXPECT_EQ(chanceInWords(0.5), "about 5 in 10");
  EXPECT_EQ(chanceInWords(0.93), "about 9 in 10");
  EXPECT_EQ(chanceInWords(0.999), "nearly certain");
}

CheckResult resultWith(Verdict verdict, std::vector<std::pair<double, double>> targetsAndProbabilities) {
  CheckResult result;
  result.limitPercent = 4;
  result.verdict = verdict;
  for (const auto& [target, probability] : targetsAndProbabilities) {
    PointResult point;
    point.target = {target, Unit::NewtonMetre};
    point.conformityProbability = probability;
    point.verdict = verdict;
    result.points.push_back(point);
  }
  return result;
}

TEST(RiskInWords, SpeaksOfTheWorstSetPoint) {
  const auto result = resultWith(Verdict::Pass, {{20, 0.999}, {60, 0.975}, {100, 0.9999}});
  const auto risk = passRisk(result);
  ASSERT_TRUE(risk);
  EXPECT_EQ(risk->target.value, 60);
  EXPECT_NEAR(risk->probability, 0.025, 1e-12);
  EXPECT_EQ(riskInWords(result),
            "The chance that this pass is wrong is about 1 in 40: at 60 N·m the true mean deviation may lie outside "
            "±4 %.");
}

TEST(RiskInWords, TurnsRoundForAFail) {
  const auto words = riskInWords(resultWith(Verdict::Fail, {{20, 0.0316}}));
  EXPECT_EQ(words, "The chance that the true mean deviation at 20 N·m lies within ±4 % after all is about 1 in 30.");
}

TEST(RiskInWords, OfAFailSpeaksWhereItFailed) {
  auto result = resultWith(Verdict::Fail, {{20, 0.4}, {60, 0.7}});
  result.points[0].verdict = Verdict::Pass;
  EXPECT_THAT(riskInWords(result), HasSubstr("at 60 N·m"));
}

TEST(RiskInWords, OwnsUpToWhatIsNotEvaluated) {
  auto result = resultWith(Verdict::Pass, {{20, 0.99}});
  result.notEvaluated = {"drive"};
  EXPECT_THAT(riskInWords(result), EndsWith("so the true chance may be larger."));
}

TEST(RiskInWords, OfNothingIsNothing) {
  EXPECT_FALSE(passRisk({}));
  EXPECT_EQ(riskInWords(CheckResult{}), "");
}

}  // namespace
}  // namespace steadyturn
