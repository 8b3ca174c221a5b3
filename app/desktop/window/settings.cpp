#include "settings.h"

#include <QSettings>

namespace steadyturn::settings {
namespace {

const QString shopKey = QStringLiteral("shop/last");
const QString minutesKey = QStringLiteral("people/minutesUnlocked");
const QString themeKey = QStringLiteral("window/theme");

}  // namespace

QString lastShop() { return QSettings().value(shopKey).toString(); }
void setLastShop(const QString& address) { QSettings().setValue(shopKey, address); }
Theme theme() { return parseTheme(QSettings().value(themeKey).toString()).value_or(Theme::System); }
double minutesUnlocked() {
  constexpr double usual = 10;
  const double minutes = QSettings().value(minutesKey, usual).toDouble();
  return minutes >= 1 ? minutes : usual;
}
int backupsKept() { return QSettings().value(QStringLiteral("backup/keep"), 14).toInt(); }
void setMinutesUnlocked(double minutes) { QSettings().setValue(minutesKey, minutes); }
void setTheme(Theme theme) { QSettings().setValue(themeKey, themeWord(theme)); }

}  // namespace steadyturn::settings
