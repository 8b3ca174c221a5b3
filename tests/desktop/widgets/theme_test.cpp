#include "theme.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <algorithm>
#include <cmath>

#include "looks.h"
#include "text.h"

namespace steadyturn {
namespace {

// Relative luminance and contrast ratio as WCAG 2.1 defines them (from memory).
double luminance(const QColor& colour) {
  const auto linear = [](double share) {
    return share <= 0.03928 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) + 0.0722 * linear(colour.blueF());
}

double contrastRatio(const QColor& a, const QColor& b) {
  const double lighter = std::max(luminance(a), luminance(b));
  const double darker = std::min(luminance(a), luminance(b));
  return (lighter + 0.05) / (darker + 0.05);
}

class ThemeContrast : public ::testing::TestWithParam<Theme> {
 protected:
  void TearDown() override { applyTheme(*qApp, Theme::Light); }
};

TEST_P(ThemeContrast, textStandsOutFromItsGround) {
  applyTheme(*qApp, GetParam());
  const QPalette palette = QApplication::palette();
  constexpr double wcagAA = 4.5;
  for (const QPalette::ColorRole ground : {QPalette::Window, QPalette::Base, QPalette::AlternateBase}) {
    for (const Tone tone : {Tone::Good, Tone::Caution, Tone::Bad, Tone::Info, Tone::Quiet}) {
      EXPECT_GE(contrastRatio(toneColour(tone, palette), palette.color(ground)), wcagAA)
          << "tone " << static_cast<int>(tone) << " on role " << ground;
    }
    EXPECT_GE(contrastRatio(palette.color(QPalette::WindowText), palette.color(ground)), wcagAA);
    EXPECT_GE(contrastRatio(palette.color(QPalette::PlaceholderText), palette.color(ground)), wcagAA);
  }
  EXPECT_GE(contrastRatio(palette.color(QPalette::HighlightedText), palette.color(QPalette::Highlight)), wcagAA);
}

INSTANTIATE_TEST_SUITE_P(Themes, ThemeContrast, ::testing::Values(Theme::Light, Theme::Dark, Theme::Contrast),
                         [](const auto& theme) { return toText(themeWord(theme.param)); });

TEST(Looks, noTwoStandingsShareASignAndNoneIsWithoutAWord) {
  std::vector<Sign> signs;
  for (const Standing standing : {Standing::Retired, Standing::Held, Standing::Failed, Standing::NeverChecked,
                                  Standing::Overdue, Standing::Leaving, Standing::DueSoon, Standing::Ready}) {
    const Look look = lookOf(standing);
    EXPECT_FALSE(look.word.isEmpty());
    signs.push_back(look.sign);
  }
  std::sort(signs.begin(), signs.end());
  EXPECT_EQ(std::unique(signs.begin(), signs.end()), signs.end());
}

TEST(Looks, noTwoVerdictsShareASign) {
  std::vector<Sign> signs;
  for (const Verdict verdict : {Verdict::Pass, Verdict::ConditionalPass, Verdict::ConditionalFail, Verdict::Fail}) {
    signs.push_back(lookOf(verdict).sign);
  }
  std::sort(signs.begin(), signs.end());
  EXPECT_EQ(std::unique(signs.begin(), signs.end()), signs.end());
}

}  // namespace
}  // namespace steadyturn
