// Light, dark and high contrast. A tone is what a colour means; its colour follows the palette, and it never stands
// alone: a sign and a word say the same.
#pragma once

#include <QColor>
#include <QPalette>
#include <QString>
#include <array>
#include <optional>

class QApplication;

namespace steadyturn {

enum class Theme { System, Light, Dark, Contrast };
inline constexpr std::array allThemes{Theme::System, Theme::Light, Theme::Dark, Theme::Contrast};
QString themeWord(Theme theme);  // "system", "light", "dark", "contrast": for settings and the command line
std::optional<Theme> parseTheme(const QString& word);
// System: light or dark as the palette was that the program started with.
void applyTheme(QApplication& application, Theme theme);

enum class Tone { Good, Caution, Bad, Info, Quiet };
// Text contrast against the palette's Window and Base is at least 4.5 : 1 (WCAG 2.1, 1.4.3).
QColor toneColour(Tone tone, const QPalette& palette);
bool isDark(const QPalette& palette);
// `colour` laid over `ground` with this share.
QColor blend(const QColor& colour, const QColor& ground, double share);

}  // namespace steadyturn
