// Making and changing service lists: its name, its fasteners in the order of the work. They are found with the Bay's
// own finder beside the page.
#pragma once

#include <QWidget>

#include "service_lines.h"
#include "service_model.h"
#include "theme.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QTableView;

namespace steadyturn {

class MessageLine;

class ServicePage : public QWidget {
  Q_OBJECT
 public:
  explicit ServicePage(ServiceModel& model, QWidget* parent = nullptr);
  void begin();  // as it was left
  void add(const Fastener& fastener);
  void bringBack();  // what was given up last

 signals:
  void findWanted();  // the next fastener for the list
  void left();
  void wentOn();  // what was said is over
  void gaveUp();
  void told(Tone tone, const QString& text);
  void troubled(const Problems& problems);

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QWidget* makeOrder();
  void showNames();
  void showList(int row);  // with this line selected
  void showReason();
  void changed(int row);
  void take();
  void move(int by);
  void remove();
  void giveUp();
  void save();
  int row() const;

  ServiceModel& model_;
  ServiceLines rows_;
  bool asked_ = false;  // that another list is in the way was said, and Save was pressed once
  QComboBox* names_;
  QLineEdit* name_;
  QTableView* lines_;
  QLabel *renamed_, *count_;
  MessageLine* reason_;
  QPushButton *up_ = nullptr, *down_ = nullptr, *remove_ = nullptr, *save_, *giveUp_;
};

}  // namespace steadyturn
