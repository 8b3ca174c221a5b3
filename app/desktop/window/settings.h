// What the program remembers of its own between two starts: the last shop, the theme, the window.
#pragma once

#include <QString>

#include "theme.h"

namespace steadyturn::settings {

QString lastShop();
void setLastShop(const QString& address);
Theme theme();
void setTheme(Theme theme);
double minutesUnlocked();  // without a key or a click, before the window asks for the PIN again
int backupsKept();         // of the daily ones; 0: none are made
void setMinutesUnlocked(double minutes);

}  // namespace steadyturn::settings
