// The bench set-up of a tool model as a page of the Bench: run by run, series by series, by keyboard.
#pragma once

#include <QWidget>
#include <array>

#include "setup_model.h"

class QLabel;
class QLineEdit;
class QPushButton;
class QRadioButton;
class QStackedWidget;

namespace steadyturn {

class MessageLine;
class SeriesGrid;

class SetupPage : public QWidget {
  Q_OBJECT
 public:
  explicit SetupPage(SetupModel& model, QWidget* parent = nullptr);
  void arrive();
  bool put(const QString& reading);  // from a device; false: no cell is waiting
  MessageLine& message() { return *message_; }

 signals:
  void saved(const steadyturn::BenchSetup& setup);
  void left();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  struct Run {
    QRadioButton* choice;
    SeriesGrid* grid;
    QLineEdit* span;
  };
  QWidget* makeRuns();
  QWidget* makeSheet(SetupRun run);
  QWidget* makeSpanLine(SetupRun run);
  void go(SetupRun run);
  void goOnFrom(SetupRun run);
  void rebuild();
  void sayGoingOn();
  void showFigures();
  void save();

  SetupModel& model_;
  MessageLine* message_;
  QLabel* title_;
  QStackedWidget* sheets_;
  std::array<Run, allSetupRuns.size()> runs_{};
  QLineEdit* basis_;
  QPushButton* save_;
};

// "Bench set-up 4 is saved for every tool like W06: drive 0.21 %, interface 0.14 %."
QString setupWords(const BenchSetup& setup, const std::string& tool);

}  // namespace steadyturn
