// A backup a day while the window has a shop open, in a folder beside it, without being asked; not of the demo depot,
// nor of a shop that is only looked at.
#pragma once

#include <QTimer>

#include "worker.h"

namespace steadyturn {

class DailyBackup : public QObject {
  Q_OBJECT
 public:
  explicit DailyBackup(OpenShop& shop, QObject* parent = nullptr);
  void look();  // whether there is one of today, and makes it if not

 signals:
  void failed(const Problems& problems);

 private:
  OpenShop& shop_;
  QTimer again_;
  Ticket making_;
  Worker worker_;  // last: it ends before what its results touch
};

// "depot.backups" beside "depot.db"; of a shop on a server, on this computer among the program's data.
QString backupFolder(const Shop& shop);

}  // namespace steadyturn
