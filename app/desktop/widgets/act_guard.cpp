#include "act_guard.h"

#include <QEvent>
#include <QScopedValueRollback>
#include <QWidget>

namespace steadyturn {

ActGuard::ActGuard(QWidget& widget, Act act) : QObject(&widget), widget_(widget), act_(act) {
  widget.installEventFilter(this);
}

void ActGuard::setReason(const QString& reason) {
  if (reason == reason_) return;
  if (reason_.isEmpty()) {
    wanted_ = !widget_.testAttribute(Qt::WA_ForceDisabled);
    ownToolTip_ = widget_.toolTip();
    ownDescription_ = widget_.accessibleDescription();
  }
  reason_ = reason;
  const QScopedValueRollback mine(changing_, true);
  widget_.setEnabled(reason_.isEmpty() && wanted_);
  widget_.setToolTip(reason_.isEmpty() ? ownToolTip_ : reason_);
  widget_.setAccessibleDescription(reason_.isEmpty() ? ownDescription_ : reason_);
}

bool ActGuard::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::EnabledChange && !reason_.isEmpty() && !changing_ &&
      !widget_.testAttribute(Qt::WA_ForceDisabled)) {
    wanted_ = true;
    const QScopedValueRollback mine(changing_, true);
    widget_.setEnabled(false);
  }
  return QObject::eventFilter(watched, event);
}

}  // namespace steadyturn
