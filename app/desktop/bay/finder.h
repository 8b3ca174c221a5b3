// Finding the fastener: what is typed or scanned, and what it finds.
#pragma once

#include <QWidget>

#include "bay_model.h"

class QLabel;
class QListView;

namespace steadyturn {

class SearchField;

class Finder : public QWidget {
  Q_OBJECT
 public:
  explicit Finder(BayModel& model, QWidget* parent = nullptr);
  void takeFocus();

 signals:
  void chosen();     // Enter on what was found: on to the wrenches
  void addWanted();  // a new specification

 private:
  void showFound();
  void toList();

  BayModel& model_;
  bool entering_ = false;  // Enter came before what it means was found
  QString foundFor_;
  SearchField* search_;
  QLabel* count_;
  QListView* list_;
};

}  // namespace steadyturn
