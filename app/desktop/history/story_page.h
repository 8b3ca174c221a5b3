// One tool at one set-point: drift and control chart side by side, what is pointed at in a line, the checks, and the
// files made of them.
#pragma once

#include <QWidget>
#include <functional>

#include "history_model.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QTableView;

namespace steadyturn {

class ChartPane;
class MessageLine;
class PathLine;

class StoryPage : public QWidget {
  Q_OBJECT
 public:
  StoryPage(HistoryModel& model, MessageLine* message, QWidget* parent = nullptr);
  void tell();
  void takeFocus();
  std::int64_t selectedCheck() const;
  Along along() const;

 signals:
  void selectionChanged();

 private:
  QLayout* makeLooks();
  QWidget* makeCharts();
  QLayout* makeFiles();
  void drawCharts();
  void followTable();
  void followChart(qint64 record);
  void showNote(const QString& note);
  void showFiles();
  void writeCertificate();
  void writeChart();
  void unlessReplacing(PathLine* line, const std::function<void()>& write);

  HistoryModel& model_;
  MessageLine* message_;
  QComboBox* along_ = nullptr;
  QCheckBox* control_ = nullptr;
  ChartPane *drift_ = nullptr, *controlChart_ = nullptr;
  QLabel *note_, *source_;
  QTableView* table_;
  PathLine *certificate_ = nullptr, *chartFile_ = nullptr;
  QLineEdit* passphrase_ = nullptr;
};

}  // namespace steadyturn
