#include "suggestions.h"

#include <algorithm>

namespace steadyturn {

Suggestions::Suggestions(QWidget& field) : QListWidget(field.window()), field_(field) {
  setFocusPolicy(Qt::NoFocus);
  setAccessibleName(tr("What fits what is typed"));
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setFrameShape(QFrame::Box);
  connect(this, &QListWidget::itemClicked, this,
          [this](const QListWidgetItem* item) { emit clickedOn(item->data(Qt::UserRole).toString()); });
  hide();
}

void Suggestions::offer(const std::vector<Suggestion>& suggestions) {
  clear();
  for (const Suggestion& one : suggestions) {
    auto* item = new QListWidgetItem(one.line, this);
    item->setData(Qt::UserRole, one.id);
  }
  setCurrentRow(-1);
  if (suggestions.empty()) return hide();
  placeBelowField();
  raise();
  show();
}

void Suggestions::step(int by) { setCurrentRow(std::clamp(currentRow() + by, 0, count() - 1)); }

QString Suggestions::chosen() const {
  return isVisible() && currentItem() != nullptr ? currentItem()->data(Qt::UserRole).toString() : QString();
}

void Suggestions::placeBelowField() {
  const QPoint corner = field_.mapTo(parentWidget(), QPoint(0, field_.height()));
  const int wanted = sizeHintForRow(0) * count() + 2 * frameWidth();
  const int room = parentWidget()->height() - corner.y() - 4;
  setGeometry(QRect(corner, QSize(field_.width(), std::max(sizeHintForRow(0), std::min(wanted, room)))));
}

}  // namespace steadyturn
