// The Bay: find the fastener, read its torque, take the right wrench, put the tightening on record.
#pragma once

#include <QWidget>

#include "bay_model.h"

class QLabel;
class QListView;
class QStackedWidget;
class QTableView;

namespace steadyturn {

class AdapterLine;
class FastenerCard;
class FastenerPanel;
class JobPanel;
class MessageLine;
class OpenJobPanel;
class SearchField;
class ThreadPage;
class TighteningLine;

class BayPlace : public QWidget {
  Q_OBJECT
 public:
  explicit BayPlace(OpenShop& shop, QWidget* parent = nullptr);
  BayModel& model() { return model_; }
  void arrive();
  // A wrench whose label was scanned, for the fastener at hand. False: no fastener is.
  bool takeTool(const QString& tool);

 private:
  QWidget* makeFinder();
  QWidget* makeSheet();
  QWidget* makeWrenches();
  void showFound();
  void showFastener();
  void showChoice();
  void showOption();
  void chooseScanned();
  void record();
  void approve();
  void addPages();
  void showPage(int page);
  void showSheet();
  void toList();
  std::optional<Option> selectedOption();

  BayModel model_;
  enum Page { HintPage, SheetPage, EntryPage, OpenJobPage, ThreadPagePlace };

  bool entering_ = false;  // Enter came before what it means was found
  QString foundFor_;
  QString scanned_;  // to be chosen as soon as the wrenches are ranked
  SearchField* search_;
  QLabel* count_;
  QListView* list_;
  QStackedWidget* right_;
  MessageLine* message_;
  JobPanel* jobs_;
  FastenerPanel* entry_;
  OpenJobPanel* opening_;
  ThreadPage* thread_;
  FastenerCard* card_;
  MessageLine* warnings_;
  AdapterLine* adapter_;
  QLabel* wrenches_;
  QTableView *options_, *refused_;
  TighteningLine* tightening_;
};

}  // namespace steadyturn
