#include "search_field.h"

#include <QAbstractItemView>
#include <QKeyEvent>

namespace steadyturn {

SearchField::SearchField(const QString& hint, QWidget* parent) : QLineEdit(parent) {
  setPlaceholderText(hint);
  setAccessibleName(hint);
  setClearButtonEnabled(true);
}

void SearchField::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape && !text().isEmpty()) {
    clear();
    return;
  }
  const bool toList = event->key() == Qt::Key_Down;
  if (toList && list_ && list_->model()->rowCount() > 0) {
    list_->setFocus(Qt::TabFocusReason);
    if (!list_->currentIndex().isValid()) list_->setCurrentIndex(list_->model()->index(0, 0));
    return;
  }
  QLineEdit::keyPressEvent(event);
}

}  // namespace steadyturn
