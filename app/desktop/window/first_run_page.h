// What stands in the window while no shop is open.
#pragma once

#include <QWidget>

class QLabel;
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

 signals:
  void demoWanted();
  void newWanted();
  void openWanted();
  void cancelWanted();

 private:
  MessageLine* message_;
  QPushButton *demo_, *create_, *open_, *cancel_;
  QProgressBar* progress_;
};

}  // namespace steadyturn
