// Paints today's deviation as a number and as a bar with its interval between the two limits.
#pragma once

#include "table_look.h"

namespace steadyturn {

class DeviationDelegate : public LookDelegate {
  Q_OBJECT
 public:
  using LookDelegate::LookDelegate;
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

}  // namespace steadyturn
