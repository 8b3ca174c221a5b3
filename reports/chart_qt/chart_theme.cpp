#include "chart_theme.h"

namespace steadyturn {

QColor ChartTheme::colour(Role role) const {
  switch (role) {
    case Role::AsFound:
      return asFound;
    case Role::AsLeft:
      return asLeft;
    case Role::Fit:
      return fit;
    case Role::Prediction:
      return predictionFill;
    case Role::Limit:
    case Role::Crossing:
      return limit;
    case Role::Guard:
      return guard;
    case Role::Control:
      return fit;
    case Role::Event:
      return quietText;
    case Role::Adjustment:
      return adjustment;
    case Role::Today:
      return today;
  }
  return text;
}

const ChartTheme& lightTheme() {
  static const ChartTheme theme{.background = QColor(0xff, 0xff, 0xff),
                                .text = QColor(0x1e, 0x24, 0x2b),
                                .quietText = QColor(0x4d, 0x56, 0x60),
                                .grid = QColor(0xe2, 0xe6, 0xea),
                                .asFound = QColor(0x12, 0x55, 0x9e),
                                .asLeft = QColor(0xb2, 0x5e, 0x00),
                                .fit = QColor(0x2f, 0x3d, 0x4b),
                                .predictionFill = QColor(0xdf, 0xe8, 0xf1),
                                .predictionEdge = QColor(0x7d, 0x8f, 0xa3),
                                .limit = QColor(0x9a, 0x12, 0x50),
                                .guard = QColor(0x7a, 0x4a, 0x62),
                                .adjustment = QColor(0x8a, 0x5a, 0x20),
                                .today = QColor(0x5a, 0x64, 0x6e)};
  return theme;
}

const ChartTheme& darkTheme() {
  static const ChartTheme theme{.background = QColor(0x1b, 0x20, 0x26),
                                .text = QColor(0xe8, 0xeb, 0xee),
                                .quietText = QColor(0xb4, 0xbc, 0xc5),
                                .grid = QColor(0x33, 0x3b, 0x44),
                                .asFound = QColor(0x6c, 0xb2, 0xf5),
                                .asLeft = QColor(0xf2, 0xa6, 0x4a),
                                .fit = QColor(0xd3, 0xdc, 0xe6),
                                .predictionFill = QColor(0x2c, 0x37, 0x43),
                                .predictionEdge = QColor(0x7b, 0x8e, 0xa2),
                                .limit = QColor(0xf2, 0x86, 0xb4),
                                .guard = QColor(0xc0, 0x90, 0xa8),
                                .adjustment = QColor(0xc9, 0x9b, 0x62),
                                .today = QColor(0x9a, 0xa4, 0xaf)};
  return theme;
}

}  // namespace steadyturn
