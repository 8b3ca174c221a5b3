// A serial line with a torque tester at its far end: a pseudo-terminal pair of the system's. The near end is reached
// through a name that stays when the tester is plugged in again.
#pragma once

#include <QByteArray>
#include <QString>

namespace steadyturn {

class TesterLine {
 public:
  explicit TesterLine(const QString& name);
  ~TesterLine();
  TesterLine(const TesterLine&) = delete;
  TesterLine& operator=(const TesterLine&) = delete;
  const QString& name() const { return name_; }
  void send(const QByteArray& bytes) const;
  void plugIn();
  void unplug();

 private:
  QString name_;
  int far_ = -1;
};

}  // namespace steadyturn
