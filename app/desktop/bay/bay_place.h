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
class MessageLine;
class SearchField;
class TighteningLine;

class BayPlace : public QWidget {
  Q_OBJECT
 public:
  explicit BayPlace(OpenShop& shop, QWidget* parent = nullptr);
  BayModel& model() { return model_; }
  void arrive();

 private:
  QWidget* makeFinder();
  QWidget* makeSheet();
  QWidget* makeWrenches();
  void showFound();
  void showFastener();
  void showChoice();
  void showOption();
  void record();
  std::optional<Option> selectedOption();

  BayModel model_;
  SearchField* search_;
  QLabel* count_;
  QListView* list_;
  QStackedWidget* right_;
  FastenerCard* card_;
  MessageLine *message_, *warnings_;
  AdapterLine* adapter_;
  QLabel* wrenches_;
  QTableView *options_, *refused_;
  TighteningLine* tightening_;
};

}  // namespace steadyturn
