// The Bay: find the fastener, read its torque, take the right wrench, put the tightening on record.
#pragma once

#include <QWidget>

#include "bay_model.h"

class QLabel;
class QStackedWidget;
class QTableView;

namespace steadyturn {

class AdapterLine;
class FastenerCard;
class FastenerPanel;
class Finder;
class JobPanel;
class MessageLine;
class OpenJobPanel;
class ServicePage;
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
  enum Page { HintPage, SheetPage, EntryPage, OpenJobPage, JudgePage, ServicesPage };

  QWidget* makeLeft();
  QWidget* makeSheet();
  QWidget* makeWrenches();
  void showFastener();
  void showChoice();
  void showOption();
  void chooseScanned();
  void record();
  void approve();
  void addPages();
  void addServices(OpenShop& shop);
  void showPage(int page);
  void back();  // from a form, to where the Bay was
  void showSheet();
  std::optional<Option> selectedOption();

  BayModel model_;
  QString scanned_;  // to be chosen as soon as the wrenches are ranked
  Finder* finder_ = nullptr;
  QStackedWidget* right_;
  MessageLine* message_;
  JobPanel* jobs_ = nullptr;
  FastenerPanel* entry_ = nullptr;
  OpenJobPanel* opening_ = nullptr;
  ThreadPage* thread_ = nullptr;
  ServicePage* services_ = nullptr;
  FastenerCard* card_ = nullptr;
  MessageLine* warnings_ = nullptr;
  AdapterLine* adapter_ = nullptr;
  QLabel* wrenches_ = nullptr;
  QTableView *options_ = nullptr, *refused_ = nullptr;
  TighteningLine* tightening_ = nullptr;
};

}  // namespace steadyturn
