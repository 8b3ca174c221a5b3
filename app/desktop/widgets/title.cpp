#include "title.h"

#include <QWidget>

namespace steadyturn {

void makeTitle(QWidget& widget, double size) {
  QFont large = widget.font();
  large.setPointSizeF(large.pointSizeF() * size);
  large.setBold(true);
  widget.setFont(large);
}

}  // namespace steadyturn
