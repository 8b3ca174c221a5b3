#include "settings.h"

#include <QSettings>

namespace steadyturn::settings {
namespace {

const QString shopKey = QStringLiteral("shop/last");
const QString themeKey = QStringLiteral("window/theme");

}  // namespace

QString lastShop() { return QSettings().value(shopKey).toString(); }
void setLastShop(const QString& address) { QSettings().setValue(shopKey, address); }
Theme theme() { return parseTheme(QSettings().value(themeKey).toString()).value_or(Theme::System); }
void setTheme(Theme theme) { QSettings().setValue(themeKey, themeWord(theme)); }

}  // namespace steadyturn::settings
