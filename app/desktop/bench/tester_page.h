// Which port the torque tester is on, and how its lines read; tried on a pasted sample before anything is connected.
#pragma once

#include <QWidget>

#include "tester_port.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;
class QTableWidget;

namespace steadyturn {

class MessageLine;

class TesterPage : public QWidget {
  Q_OBJECT
 public:
  explicit TesterPage(TesterPort& port, QWidget* parent = nullptr);
  void arrive();
  MessageLine& message() { return *message_; }

 signals:
  void left();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void listPorts();
  void tryOut();
  void toggle();
  void showState();
  TesterSettings typed() const;

  TesterPort& port_;
  MessageLine* message_;
  QComboBox *ports_, *baud_;
  QLineEdit *pattern_, *peak_;
  QLabel* wrong_;
  QPlainTextEdit* sample_;
  QTableWidget* tried_;
  QPushButton* connect_;
};

}  // namespace steadyturn
