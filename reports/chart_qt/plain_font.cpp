#include "plain_font.h"

namespace steadyturn {

QFont plainFont(int pixels, bool bold) {
  QFont font(QStringLiteral("Noto Sans"));
  font.setPixelSize(pixels);
  font.setBold(bold);
  // The only way to switch ligatures off before Qt 6.7: any letter spacing does it. A 64th of a pixel is Qt's
  // smallest.
  font.setLetterSpacing(QFont::AbsoluteSpacing, 1.0 / 64);
  return font;
}

}  // namespace steadyturn
