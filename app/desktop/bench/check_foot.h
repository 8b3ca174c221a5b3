// Beneath the readings: the verdict as it stands, how sure it is, what the check leaves open, the budget, and what
// can be done with it and with the tool.
#pragma once

#include <QWidget>

#include "reason_line.h"

class QLabel;
class QPushButton;
class QVBoxLayout;

namespace steadyturn {

class Badge;
class BenchModel;
class BudgetPanel;

class CheckFoot : public QWidget {
  Q_OBJECT
 public:
  explicit CheckFoot(BenchModel& model, QWidget* parent = nullptr);
  QPushButton* save() { return save_; }
  void showEvaluation();
  void showTester(bool on);
  void showTool();  // what may be done with it

 signals:
  void saveWanted();
  void pointWanted();
  void clearWanted();
  void changeWanted(steadyturn::ToolChange change);
  void setupWanted();
  void testerWanted();

 private:
  QVBoxLayout* makeButtons();

  BenchModel& model_;
  Badge* verdict_;
  QLabel *words_, *notes_;
  BudgetPanel* budget_;
  QPushButton *save_ = nullptr, *clear_ = nullptr, *addPoint_ = nullptr, *hold_ = nullptr, *retire_ = nullptr,
              *setup_ = nullptr, *tester_ = nullptr;
};

}  // namespace steadyturn
