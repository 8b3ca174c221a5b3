// A button that changes the shop is shown disabled, with the reason, to somebody whose role may not.
#pragma once

#include <QObject>
#include <QString>

#include "permission.h"

class QWidget;

namespace steadyturn {

class ActGuard : public QObject {
  Q_OBJECT
 public:
  // Belongs to the widget. The place goes on enabling and disabling it as its own state has it.
  ActGuard(QWidget& widget, Act act);
  Act act() const { return act_; }
  // Empty: it may be used. Else why not, as the button's tool tip and description have it.
  void setReason(const QString& reason);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QWidget& widget_;
  Act act_;
  QString reason_, ownToolTip_, ownDescription_;
  bool wanted_ = true;  // by the place
  bool changing_ = false;
};

// Marks a widget as one that does `act`.
inline void needs(QWidget& widget, Act act) { new ActGuard(widget, act); }

}  // namespace steadyturn
