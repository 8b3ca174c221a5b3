// The job in hand, above the fasteners: which sheet, its lines to tick off, closing it, opening another.
#pragma once

#include <QWidget>

#include "bay_model.h"
#include "theme.h"

class QComboBox;
class QLineEdit;
class QListView;
class QPushButton;

namespace steadyturn {

class JobPanel : public QWidget {
  Q_OBJECT
 public:
  explicit JobPanel(BayModel& model, QWidget* parent = nullptr);
  void nextLine();  // to the first that still lacks something

 signals:
  void openWanted();
  void servicesWanted();
  void told(Tone tone, const QString& text);
  void troubled(const Problems& problems);

 private:
  void showJobs();
  void showSheet();
  void close();
  void print();

  BayModel& model_;
  QComboBox* jobs_;
  QListView* lines_;
  QWidget* foot_;
  QLineEdit* reason_;
};

}  // namespace steadyturn
