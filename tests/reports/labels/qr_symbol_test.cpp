#include "qr_symbol.h"

#include <gtest/gtest.h>

#include <QImage>
#include <algorithm>

namespace steadyturn {
namespace {

// ISO/IEC 18004, table 7 (from memory): alphanumeric characters at level M: version 1 holds 20 (at L 25, at Q 16),
// version 2 holds 38, version 40 holds 3391. Version v has 17 + 4v modules a side.
TEST(QrSymbol, IsOfLevelM) {
  EXPECT_EQ(QrSymbol::of(std::string(20, 'A'))->sideWithQuietZone(), 21 + 8);
  EXPECT_EQ(QrSymbol::of(std::string(21, 'A'))->sideWithQuietZone(), 25 + 8);
  EXPECT_EQ(QrSymbol::of(std::string(38, 'A'))->sideWithQuietZone(), 25 + 8);
  EXPECT_EQ(QrSymbol::of(std::string(39, 'A'))->sideWithQuietZone(), 29 + 8);
  EXPECT_EQ(QrSymbol::of(std::string(3391, 'A'))->sideWithQuietZone(), 177 + 8);
  EXPECT_FALSE(QrSymbol::of(std::string(3392, 'A')));
}

// Quiet zone of four modules and the finder patterns at three corners: 7 × 7 dark, in it 5 × 5 light, in it 3 × 3
// dark (ISO/IEC 18004, 6.3.3 and 6.3.8, from memory).
TEST(QrSymbol, DrawsWholeModulesInsideItsQuietZone) {
  constexpr int module = 5, side = 29;
  QImage image(side * module, side * module, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  QrSymbol::of("STURN:T:W06")->draw(painter, QPointF(0, 0), module);
  painter.end();
  const auto dark = [&](int row, int column) {
    const QRgb colour = image.pixel(column * module, row * module);
    for (int y = 0; y < module; ++y)
      for (int x = 0; x < module; ++x) EXPECT_EQ(image.pixel(column * module + x, row * module + y), colour);
    return colour == qRgb(0, 0, 0);
  };
  for (int i = 0; i < side; ++i) {
    for (int rim = 0; rim < 4; ++rim) {
      EXPECT_FALSE(dark(rim, i) || dark(i, rim) || dark(side - 1 - rim, i) || dark(i, side - 1 - rim));
    }
  }
  for (const auto& [top, left] : {std::pair{4, 4}, std::pair{4, side - 11}, std::pair{side - 11, 4}}) {
    for (int row = 0; row < 7; ++row) {
      for (int column = 0; column < 7; ++column) {
        const int ring = std::min({row, column, 6 - row, 6 - column});
        EXPECT_EQ(dark(top + row, left + column), ring != 1) << top + row << " " << left + column;
      }
    }
  }
}

}  // namespace
}  // namespace steadyturn
