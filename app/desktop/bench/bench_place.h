// The Bench: record a check of one tool against a reference standard.
#pragma once

#include <QWidget>

#include "bench_model.h"

class QLabel;
class QPushButton;

namespace steadyturn {

class Badge;
class BenchForm;
class MessageLine;
class ReadingsGrid;

class BenchPlace : public QWidget {
  Q_OBJECT
 public:
  explicit BenchPlace(OpenShop& shop, QWidget* parent = nullptr);
  BenchModel& model() { return model_; }
  void take(const QString& tool);  // puts a tool on the bench
  void arrive();                   // takes the focus where work goes on

 signals:
  void historyWanted(const QString& tool);

 private:
  QWidget* makeFoot();
  void pickUp(const QString& tool);
  void showPlan();
  void showEvaluation();
  void goToWork();
  void clear();
  void save();
  void sayWhatNow(const SavedCheck& saved);
  void putOnHold(const Check& failed);
  void recallHeading();
  void rememberHeading() const;

  BenchModel model_;
  MessageLine* message_;
  BenchForm* form_;
  QLabel* plan_;
  ReadingsGrid* grid_;
  Badge* verdict_;
  QLabel *words_, *notes_;
  QPushButton *save_, *clear_, *addPoint_;
};

}  // namespace steadyturn
