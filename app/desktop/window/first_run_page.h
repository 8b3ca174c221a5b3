// What stands in the window while no shop is open.
#pragma once

#include <QWidget>

class QLabel;
class QLineEdit;
class QProgressBar;
class QPushButton;

namespace steadyturn {

class MessageLine;

class FirstRunPage : public QWidget {
  Q_OBJECT
 public:
  explicit FirstRunPage(QWidget* parent = nullptr);
  MessageLine* message() { return message_; }
  void setWorking(bool working);
  void setProgress(double part);
  void arrive();
  void askServer();  // the person wants to type an address

 signals:
  void demoWanted();
  void newWanted();
  void openWanted();
  void joinWanted(const QString& address);
  void cancelWanted();

 private:
  MessageLine* message_;
  void join();

  QPushButton *demo_, *create_, *open_, *join_, *cancel_;
  QLineEdit* server_;
  QProgressBar* progress_;
};

}  // namespace steadyturn
