#include "text.h"

#include <gtest/gtest.h>

namespace steadyturn {
namespace {

TEST(Text, signsPercentagesWithATrueMinus) {
  EXPECT_EQ(percentText(1.2), QStringLiteral("+1.20 %"));
  EXPECT_EQ(percentText(-0.354), QStringLiteral("−0.35 %"));
  EXPECT_EQ(percentText(-0.001), QStringLiteral("0.00 %"));  // no sign on what rounds to nothing
}

TEST(Text, neverClaimsCertainty) {
  EXPECT_EQ(probabilityText(1), QStringLiteral("> 99.9 %"));
  EXPECT_EQ(probabilityText(0), QStringLiteral("< 0.1 %"));
  EXPECT_EQ(probabilityText(0.9192), QStringLiteral("91.9 %"));
}

TEST(Text, readsACommaAsADecimalMark) {
  EXPECT_EQ(asNumberText(" 10,5 "), "10.5");
  EXPECT_EQ(asNumberText("10.5"), "10.5");
}

TEST(Text, carriesDatesThereAndBack) {
  const Date leapDay{std::chrono::year{2024} / 2 / 29};
  EXPECT_EQ(toQDate(leapDay), QDate(2024, 2, 29));
  EXPECT_EQ(fromQDate(QDate(2024, 2, 29)), leapDay);
  EXPECT_EQ(dateText(leapDay), QStringLiteral("2024-02-29"));
  EXPECT_EQ(dateText(std::nullopt), absentText());
}

}  // namespace
}  // namespace steadyturn
