// The chosen fastener: its torque, its window, the warning about plastic, and all that is to be known before the
// pull.
#pragma once

#include <QWidget>

#include "choose.h"
#include "records.h"

class QGridLayout;
class QLabel;
class QPushButton;

namespace steadyturn {

class Badge;
class MessageLine;
class TorqueDisplay;
class WindowScale;

class FastenerCard : public QWidget {
  Q_OBJECT
 public:
  explicit FastenerCard(QWidget* parent = nullptr);
  void display(const Fastener& fastener);
  void showDelivered(const Fastener& fastener, const std::optional<Option>& option);

 signals:
  void limitWanted();  // a plastic part has none

 private:
  void showFacts(const Fastener& fastener);

  QLabel* title_;
  Badge* release_;
  TorqueDisplay* torque_;
  QLabel* window_;
  WindowScale* scale_;
  MessageLine* plastic_;
  QPushButton* limit_;
  QWidget* facts_ = nullptr;
};

}  // namespace steadyturn
