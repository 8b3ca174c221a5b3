// What the program remembers of its own between two starts: the last shop, the theme, the window.
#pragma once

#include <QString>

#include "theme.h"

namespace steadyturn::settings {

QString lastShop();
void setLastShop(const QString& address);
Theme theme();
void setTheme(Theme theme);

}  // namespace steadyturn::settings
