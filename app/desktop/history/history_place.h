// History: one tool's checks as a chart and as a table, its certificates, its chart as a file.
#pragma once

#include <QWidget>
#include <functional>

#include "history_model.h"

class QChart;
class QChartView;
class QComboBox;
class QLabel;
class QPushButton;
class QTableView;

namespace steadyturn {

class MessageLine;
class PathLine;
class Picker;

class HistoryPlace : public QWidget {
  Q_OBJECT
 public:
  explicit HistoryPlace(OpenShop& shop, QWidget* parent = nullptr);
  ~HistoryPlace() override;
  HistoryModel& model() { return model_; }
  void open(const QString& tool);
  void arrive();

 signals:
  void checkWanted(const QString& tool);
  void correctionWanted(std::int64_t check);

 protected:
  void changeEvent(QEvent* event) override;

 private:
  QLayout* makeHead();
  QLayout* makeFiles();
  void offerTools();
  void tell();
  void drawChart();
  void showFiles();
  void writeCertificate();
  void writeChart();
  void unlessReplacing(PathLine* line, const std::function<void()>& write);

  HistoryModel model_;
  Picker* tool_;
  QComboBox* target_;
  QLabel* working_;
  QPushButton* correct_;
  MessageLine* message_;
  QChartView* view_;
  QTableView* table_;
  QLabel* source_;
  PathLine *certificate_, *chartFile_;
};

}  // namespace steadyturn
