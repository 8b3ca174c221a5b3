#include "text_lines.h"

#include <gtest/gtest.h>

#include <QFont>

namespace steadyturn {
namespace {

// Wherever a line ends, a number and its unit stand on one line (SI Brochure, 9th edition, 5.4.3).
TEST(TextLines, ANumberKeepsItsUnit) {
  const QFont font;
  const QString text = QStringLiteral("set to 170 N·m or 14.75 lbf·ft, within ±4 % of it");
  const double whole = widthOf(text, font);
  for (double width = widestWord(text, font) + 1; width < whole; width += 3) {
    const auto joined = breakLines(text, font, width).join(QLatin1Char('|'));
    EXPECT_TRUE(joined.contains(QStringLiteral("170 N·m"))) << joined.toStdString();
    EXPECT_TRUE(joined.contains(QStringLiteral("14.75 lbf·ft"))) << joined.toStdString();
    EXPECT_TRUE(joined.contains(QStringLiteral("±4 %"))) << joined.toStdString();
  }
}

TEST(TextLines, AColumnIsAtLeastAsWideAsANumberWithItsUnit) {
  const QFont font;
  EXPECT_GE(widestWord(QStringLiteral("set to 170 N·m"), font), widthOf(QStringLiteral("170 N·m"), font));
  EXPECT_LT(widestWord(QStringLiteral("Deviation, %"), font), widthOf(QStringLiteral("Deviation, %"), font));
}

}  // namespace
}  // namespace steadyturn
