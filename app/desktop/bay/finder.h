// Finding the fastener: what is typed or scanned, and what it finds.
#pragma once

#include <QWidget>

#include "bay_model.h"

class QLabel;
class QListView;
class QPushButton;

namespace steadyturn {

class SearchField;

class Finder : public QWidget {
  Q_OBJECT
 public:
  explicit Finder(BayModel& model, QWidget* parent = nullptr);
  void takeFocus();
  // While a list is made, what is found goes on it instead of being shown.
  void setPicking(bool picking);

 signals:
  void chosen();  // Enter on what was found: on to the wrenches
  void picked(const Fastener& fastener);
  void addWanted();  // a new specification

 private:
  void showFound();
  void toList();
  void enter(int row);

  BayModel& model_;
  bool picking_ = false;
  bool entering_ = false;  // Enter came before what it means was found
  QString foundFor_;
  SearchField* search_;
  QLabel* count_;
  QListView* list_;
  QPushButton *adding_, *picker_;
};

}  // namespace steadyturn
