// History: every tool side by side, worst first; one tool at all its set-points; one set-point with its charts,
// checks and certificates; what its failed check puts in doubt; whether predictions held and how long the
// checking interval may be.
#pragma once

#include <QWidget>

#include "history_model.h"

class QComboBox;
class QLabel;
class QPushButton;
class QStackedWidget;

namespace steadyturn {

class ForesightPage;
class MessageLine;
class Picker;
class RecallPage;
class SmallCharts;
class StoryPage;

class HistoryPlace : public QWidget {
  Q_OBJECT
 public:
  explicit HistoryPlace(OpenShop& shop, QWidget* parent = nullptr);
  ~HistoryPlace() override;
  HistoryModel& model() { return model_; }
  void open(const QString& tool);
  void showFleet();
  void showRecall();  // of the picked tool
  void openRecall(const QString& tool);
  void showForesight();  // of the picked tool and those like it, or of the shop
  ForesightPage& foresight() { return *foresight_; }
  void arrive();

 signals:
  void checkWanted(const QString& tool);
  void correctionWanted(std::int64_t check);

 private:
  QLayout* makeHead();
  void offerTools();
  void offerTargets();
  void tell();
  void tellFleet();
  void tellSetPoints();
  void takeTarget(int index);
  void openSmall(int row);
  void allowActions();

  HistoryModel model_;
  bool recallWanted_ = false;  // when its tool has been read
  Picker* tool_ = nullptr;
  QComboBox* target_ = nullptr;
  QLabel *working_ = nullptr, *fleetWords_;
  QPushButton *fleet_ = nullptr, *interval_ = nullptr, *doubt_ = nullptr, *correct_ = nullptr, *check_ = nullptr;
  MessageLine* message_;
  QStackedWidget* pages_;
  SmallCharts* small_;
  StoryPage* story_;
  RecallPage* recall_;
  ForesightPage* foresight_;
};

}  // namespace steadyturn
