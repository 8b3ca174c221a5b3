// The texts of the Help menu.
#pragma once

#include <QString>

namespace steadyturn {

QString keysText();      // HTML
QString aboutText();     // HTML
QString cautionsText();  // HTML

}  // namespace steadyturn
