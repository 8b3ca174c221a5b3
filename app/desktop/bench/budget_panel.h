// The uncertainty budget on view; hidden while there is nothing to show.
#pragma once

#include <QTableView>

#include "budget_table.h"

namespace steadyturn {

class BudgetPanel : public QTableView {
  Q_OBJECT
 public:
  explicit BudgetPanel(QWidget* parent = nullptr);
  void show(std::vector<BudgetView> views);
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 private:
  int heightOf(int rows) const;
  int setPoints_ = 0;
  BudgetTable table_;
};

}  // namespace steadyturn
