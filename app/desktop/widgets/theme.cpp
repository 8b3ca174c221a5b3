#include "theme.h"

#include <QApplication>

#include "outlined_style.h"

namespace steadyturn {
namespace {

struct Shades {
  QColor window, base, alternate, text, quiet, button, line, accent, accentText, link;
};

const Shades light{"#eeece6", "#fbfaf7", "#f3f1eb", "#1d2326", "#5b6367",
                   "#e3e0d8", "#b9b4a8", "#1c5560", "#ffffff", "#1c5560"};
const Shades dark{"#1d2224", "#15191b", "#1a1f21", "#e6e4dd", "#a3a9aa",
                  "#2a3033", "#5b6467", "#2c707c", "#ffffff", "#8fd0da"};
const Shades contrast{"#000000", "#000000", "#101010", "#ffffff", "#e0e0e0",
                      "#000000", "#ffffff", "#ffe600", "#000000", "#7fe8ff"};

QPalette paletteOf(const Shades& shades) {
  QPalette palette;
  palette.setColor(QPalette::Window, shades.window);
  palette.setColor(QPalette::WindowText, shades.text);
  palette.setColor(QPalette::Base, shades.base);
  palette.setColor(QPalette::AlternateBase, shades.alternate);
  palette.setColor(QPalette::Text, shades.text);
  palette.setColor(QPalette::Button, shades.button);
  palette.setColor(QPalette::ButtonText, shades.text);
  palette.setColor(QPalette::BrightText, shades.accentText);
  palette.setColor(QPalette::PlaceholderText, shades.quiet);
  palette.setColor(QPalette::ToolTipBase, shades.base);
  palette.setColor(QPalette::ToolTipText, shades.text);
  palette.setColor(QPalette::Highlight, shades.accent);
  palette.setColor(QPalette::HighlightedText, shades.accentText);
  palette.setColor(QPalette::Link, shades.link);
  palette.setColor(QPalette::LinkVisited, shades.link);
  palette.setColor(QPalette::Light, blend(Qt::white, shades.button, 0.35));
  palette.setColor(QPalette::Midlight, blend(Qt::white, shades.button, 0.15));
  palette.setColor(QPalette::Mid, shades.line);
  palette.setColor(QPalette::Dark, blend(Qt::black, shades.line, 0.25));
  palette.setColor(QPalette::Shadow, Qt::black);
  const QColor faint = blend(shades.text, shades.window, 0.5);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
    palette.setColor(QPalette::Disabled, role, faint);
  }
  palette.setColor(QPalette::Disabled, QPalette::Highlight, shades.line);
  return palette;
}

bool startedDark() {
  static const bool atStart = isDark(QGuiApplication::palette());
  return atStart;
}

bool isContrast(const QPalette& palette) { return palette.color(QPalette::Window) == QColor(Qt::black); }

}  // namespace

QString themeWord(Theme theme) {
  switch (theme) {
    case Theme::System:
      return QStringLiteral("system");
    case Theme::Light:
      return QStringLiteral("light");
    case Theme::Dark:
      return QStringLiteral("dark");
    case Theme::Contrast:
      return QStringLiteral("contrast");
  }
  return {};
}

std::optional<Theme> parseTheme(const QString& word) {
  for (const Theme theme : allThemes) {
    if (themeWord(theme) == word) return theme;
  }
  return std::nullopt;
}

void applyTheme(QApplication& application, Theme theme) {
  const bool systemDark = startedDark();  // read before our palette replaces it
  // One style everywhere: widths and paddings that were looked at are the ones people get.
  application.setStyle(new OutlinedStyle);
  const Shades* shades = &light;
  if (theme == Theme::Dark || (theme == Theme::System && systemDark)) shades = &dark;
  if (theme == Theme::Contrast) shades = &contrast;
  QApplication::setPalette(paletteOf(*shades));
}

QColor toneColour(Tone tone, const QPalette& palette) {
  if (isContrast(palette)) {
    switch (tone) {
      case Tone::Good:
        return "#5dff9b";
      case Tone::Caution:
        return "#ffe600";
      case Tone::Bad:
        return "#ff9a9a";
      case Tone::Info:
        return "#7fe8ff";
      case Tone::Quiet:
        return "#ffffff";
    }
  }
  const bool onDark = isDark(palette);
  switch (tone) {
    case Tone::Good:
      return onDark ? "#83d19c" : "#1d6638";
    case Tone::Caution:
      return onDark ? "#eebb62" : "#7f4d00";
    case Tone::Bad:
      return onDark ? "#ff978c" : "#a5241b";
    case Tone::Info:
      return onDark ? "#8fd0da" : "#1c5560";
    case Tone::Quiet:
      return onDark ? "#a3a9aa" : "#5b6367";
  }
  return palette.color(QPalette::Text);
}

bool isDark(const QPalette& palette) { return palette.color(QPalette::Window).lightness() < 128; }

QColor blend(const QColor& colour, const QColor& ground, double share) {
  const auto mix = [share](int a, int b) { return static_cast<int>(share * a + (1 - share) * b); };
  return QColor(mix(colour.red(), ground.red()), mix(colour.green(), ground.green()),
                mix(colour.blue(), ground.blue()));
}

}  // namespace steadyturn
