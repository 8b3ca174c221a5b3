// Watches whether the server of a shop answers, while the window has the shop open: who types has to know before they
// press Enter. A shop in a file needs no watch.
#pragma once

#include <QTimer>

#include "worker.h"

namespace steadyturn {

class ServerWatch : public QObject {
  Q_OBJECT
 public:
  static constexpr std::chrono::seconds pause{5};
  explicit ServerWatch(OpenShop& shop, QObject* parent = nullptr);
  void look();
  bool lost() const { return lost_; }

 signals:
  void wentAway(const Problems& problems);
  void cameBack();

 private:
  QTimer again_;
  Ticket asking_;
  bool lost_ = false;
  Worker worker_;  // last: it ends before what its results touch
};

}  // namespace steadyturn
