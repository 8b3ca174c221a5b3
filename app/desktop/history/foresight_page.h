// Did earlier predictions hold, and how long may the checking interval be? Three charts on one page: coverage, risk
// and effort; their words and the files made of them.
#pragma once

#include <QWidget>

#include "foresight_model.h"

class QComboBox;
class QLabel;
class QSpinBox;

namespace steadyturn {

class ChartPane;
class MessageLine;
class PathLine;

class ForesightPage : public QWidget {
  Q_OBJECT
 public:
  ForesightPage(OpenShop& shop, MessageLine* message, QWidget* parent = nullptr);
  ForesightModel& model() { return model_; }
  // Of this tool, of tools of its kind, or of the whole shop; without a tool, of the whole shop alone.
  void open(const Tool* tool);

 private:
  QLayout* makeQuestion();
  QLayout* makeCharts();
  QLayout* makeFiles();
  ChartPane* makePane(const QString& name);
  void ask();
  void tell();
  void suggestFile();
  void writeFile();

  ForesightModel model_;
  MessageLine* message_;
  QComboBox *scope_ = nullptr, *picture_ = nullptr;
  QSpinBox* target_ = nullptr;
  QLabel *working_, *note_, *words_;
  ChartPane *coverage_ = nullptr, *risk_ = nullptr, *effort_ = nullptr;
  PathLine* file_ = nullptr;
};

}  // namespace steadyturn
