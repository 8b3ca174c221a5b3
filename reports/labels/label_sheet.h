// Where labels stand on a page. Lengths in millimetres.
#pragma once

#include "problem.h"

namespace steadyturn {

struct LabelPlace {
  double left = 0, top = 0, width = 0, height = 0;
};

// The label's size follows: what margins and gaps leave, shared out over rows and columns.
struct LabelSheet {
  double pageWidth = 0, pageHeight = 0;
  double left = 0, top = 0, right = 0, bottom = 0;  // margins
  int columns = 1, rows = 1;
  double columnGap = 0, rowGap = 0;
  int skip = 0;           // places already used up on the first sheet, counted row by row
  bool cutLines = false;  // for plain paper that is cut by hand

  int places() const { return columns * rows; }
  // The place-th label of a page, counted row by row from 0.
  LabelPlace place(int place) const;
};

// One label a page, for a printer that takes a roll.
LabelSheet singleLabel(double widthMm = 62, double heightMm = 29);
// A4 (ISO 216: 210 mm × 297 mm), 3 × 8 labels of 64 mm × 33 mm on plain paper, with lines to cut along.
LabelSheet a4Labels();

// The smallest label that is taken: less leaves no room for legible words beside a QR code.
inline constexpr double leastLabelWidthMm = 40, leastLabelHeightMm = 20;

// Every reason why the sheet can't be printed on, each naming its field ("sheet.columns").
Result<void> checkSheet(const LabelSheet& sheet);

}  // namespace steadyturn
