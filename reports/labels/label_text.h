// The words of a label, set as large as its place allows.
#pragma once

#include <QFont>
#include <QPainter>
#include <QRectF>
#include <QStringList>
#include <optional>
#include <vector>

#include "labels.h"

namespace steadyturn {

struct SetLines {
  QFont font;
  QStringList lines;
};

struct LabelText {
  std::vector<SetLines> parts;  // from the top

  double height() const;
  void draw(QPainter& painter, QRectF place) const;
};

// Sets mark, description, dates and state into width × height (in units of `point`, the length of a typographic
// point): first in full size, then smaller, down to the smallest legible print, where the description gives way.
// Nothing when the rest does not fit even then.
std::optional<LabelText> setLabelText(const ToolLabel& label, Date printed, QSizeF size, double point);

}  // namespace steadyturn
