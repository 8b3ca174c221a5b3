// A thread and its class: stress area, proof load, preload and torque over friction, so that a lead can judge a
// specification.
#pragma once

#include <QWidget>

#include "records.h"

class QComboBox;
class QLabel;
class QLineEdit;

namespace steadyturn {

class JointChart;

class ThreadPage : public QWidget {
  Q_OBJECT
 public:
  explicit ThreadPage(QWidget* parent = nullptr);
  void begin(const Fastener& fastener);  // what is to be judged

 signals:
  void left();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void work();

  std::optional<double> target_;  // N·m
  QLineEdit* thread_;
  QComboBox* class_;
  QLabel *title_, *figures_;
  JointChart* chart_;
};

}  // namespace steadyturn
