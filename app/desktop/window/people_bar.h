// Who is at work, in a line above the places: a name and a PIN, no dialog. It locks after some minutes without a key
// or a click; what is typed in the places stays as it is.
#pragma once

#include <QFrame>
#include <QPointer>
#include <QTimer>

#include "open_shop.h"
#include "worker.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace steadyturn {

class PeopleBar : public QFrame {
  Q_OBJECT
 public:
  explicit PeopleBar(OpenShop& shop, QWidget* parent = nullptr);
  void refresh();  // after accounts were added, closed or signed in; hidden in a shop without any
  void lock();
  bool locked() const { return !lockedOut_.isEmpty(); }
  void setMinutes(double minutes);  // without a key or a click, before it locks

 signals:
  void aboutToLock();  // what is typed can still be kept
  void signedIn();     // the work goes on where it was

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void trySignIn();
  void let(const Result<Session>& done);
  void leave();
  void fillNames();

  OpenShop& shop_;
  QLabel* who_;
  QComboBox* name_;
  QLineEdit* pin_;
  QLabel* wrong_;
  QPushButton *enter_, *leave_;
  QTimer idle_;
  Ticket asking_;
  QString lockedOut_;         // who was at work when it locked
  QPointer<QWidget> before_;  // had the focus then
  Worker worker_;             // last: hashing a PIN takes a moment that would hold the window
};

}  // namespace steadyturn
