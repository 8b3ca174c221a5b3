#include "reading_question.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <vector>

#include "check.h"

namespace steadyturn {
namespace {

constexpr double limit = 4;

struct Asked {
  const char* typed;
  StatedTorque target;
  QuestionKind kind;
  double wouldBe;
  Unit unit;
};

// Factors between units: NIST SP 811 (2008), App. B (1.355 818, 0.112 984 8, 9.806 65; 12 in = 1 ft). The slips are
// own cases.
constexpr std::array asked{
    Asked{"19.8", {14.75, Unit::PoundForceFoot}, QuestionKind::ReadInOtherUnit, 14.60, Unit::PoundForceFoot},
    Asked{"14.6", {20, Unit::NewtonMetre}, QuestionKind::ReadInOtherUnit, 19.79, Unit::NewtonMetre},
    Asked{"27.1", {20, Unit::NewtonMetre}, QuestionKind::SetInOtherUnit, 19.99, Unit::PoundForceFoot},
    Asked{"177.3", {20, Unit::NewtonMetre}, QuestionKind::ReadInOtherUnit, 20.03, Unit::NewtonMetre},
    Asked{"2.27", {20, Unit::NewtonMetre}, QuestionKind::SetInOtherUnit, 20.09, Unit::PoundForceInch},
    Asked{"241", {20, Unit::PoundForceFoot}, QuestionKind::ReadInOtherUnit, 20.08, Unit::PoundForceFoot},
    Asked{"20.1", {240, Unit::PoundForceInch}, QuestionKind::ReadInOtherUnit, 241.2, Unit::PoundForceInch},
    Asked{"2.05", {20, Unit::NewtonMetre}, QuestionKind::ReadInOtherUnit, 20.10, Unit::NewtonMetre},
    Asked{"196", {20, Unit::NewtonMetre}, QuestionKind::SetInOtherUnit, 19.99, Unit::KilogramForceMetre},
    Asked{"2010", {20, Unit::NewtonMetre}, QuestionKind::ReadInOtherUnit, 20.10, Unit::NewtonMetre},
    Asked{"2,005", {20, Unit::NewtonMetre}, QuestionKind::ShiftedPoint, 20.05, Unit::NewtonMetre},
    Asked{"10.01", {100, Unit::NewtonMetre}, QuestionKind::ShiftedPoint, 100.1, Unit::NewtonMetre},
    Asked{"9.8", {20, Unit::NewtonMetre}, QuestionKind::LostDigit, 19.8, Unit::NewtonMetre},
    Asked{"1.5", {61, Unit::NewtonMetre}, QuestionKind::LostDigit, 61.5, Unit::NewtonMetre},
    Asked{"2005", {205, Unit::NewtonMetre}, QuestionKind::DoubledDigit, 205, Unit::NewtonMetre},
    Asked{"119.9", {20, Unit::NewtonMetre}, QuestionKind::DoubledDigit, 19.9, Unit::NewtonMetre},
};

TEST(ReadingQuestion, NamesWhatTheReadingWouldBe) {
  for (const auto& one : asked) {
    const auto question = questionReading(one.typed, one.target, {}, limit);
    ASSERT_TRUE(question) << one.typed;
    EXPECT_EQ(question->kind, one.kind) << question->text;
    EXPECT_NEAR(question->wouldBe.value, one.wouldBe, 0.006) << question->text;
    EXPECT_EQ(question->wouldBe.unit, one.unit) << question->text;
  }
}

TEST(ReadingQuestion, IsWordedWithBothUnits) {
  EXPECT_EQ(questionReading("19.8", {14.75, Unit::PoundForceFoot}, {}, limit)->text, "19.8 N·m would be 14.6 lbf·ft");
  EXPECT_EQ(questionReading("119.9", {20, Unit::NewtonMetre}, {}, limit)->text,
            "119.9 N·m would be 19.9 N·m but for a doubled digit");
}

TEST(ReadingQuestion, IsNotAskedOfAToolThatIsMerelyOut) {
  const StatedTorque target{20, Unit::NewtonMetre};
  for (const char* typed : {"20", "19.2", "21.3", "17.5", "22.9", "16.6"}) {
    EXPECT_FALSE(questionReading(typed, target, {}, limit)) << typed;
  }
  // 20 % out, and no slip of the keys near it.
  EXPECT_FALSE(questionReading("25", target, {}, limit));
}

TEST(ReadingQuestion, LeavesWhatIsNoReadingToOthers) {
  for (const char* typed : {"", "x", "0", "-20", "2O.1", "."}) {
    EXPECT_FALSE(questionReading(typed, {20, Unit::NewtonMetre}, {}, limit)) << typed;
  }
}

TEST(ReadingQuestion, MeasuresASlipAtTheOtherReadingsToo) {
  const StatedTorque target{20, Unit::NewtonMetre};
  const std::vector<double> farOut{25.1, 25.0, 25.2};
  // Like its neighbours: the tool is out, the person types well.
  EXPECT_FALSE(questionReading("25.3", target, farOut, limit));
  const auto slip = questionReading("252", target, farOut, limit);
  ASSERT_TRUE(slip);
  EXPECT_EQ(slip->kind, QuestionKind::ShiftedPoint);
  EXPECT_EQ(slip->wouldBe.value, 25.2);
}

TEST(ReadingQuestion, StaysWhenAllReadingsAreInTheWrongUnit) {
  const std::vector<double> others{19.9, 20.0, 19.8};
  EXPECT_TRUE(questionReading("19.8", {14.75, Unit::PoundForceFoot}, others, limit));
}

RC_GTEST_PROP(ReadingQuestion, NeverOffersWhatWouldNotPassNearby, ()) {
  const double value = *rc::gen::inRange(1, 100000) / 100.0;
  const double target = *rc::gen::inRange(10, 1000);
  const auto question = questionReading(writeNumber(value), {target, Unit::NewtonMetre}, {}, limit);
  if (std::abs(deviationPercent(target, value)) <= 4 * limit) RC_ASSERT(!question);
  if (question) RC_ASSERT(std::abs(deviationPercent(target, question->wouldBe.value)) <= 1.5 * limit + 1e-9);
}

}  // namespace
}  // namespace steadyturn
