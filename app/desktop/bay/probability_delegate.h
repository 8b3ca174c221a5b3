// A probability as a number and a small bar.
#pragma once

#include "table_look.h"

namespace steadyturn {

class ProbabilityDelegate : public LookDelegate {
  Q_OBJECT
 public:
  using LookDelegate::LookDelegate;
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

}  // namespace steadyturn
