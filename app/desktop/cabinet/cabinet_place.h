// The Cabinet: all tools, what each needs, and what can be done about it.
#pragma once

#include <QWidget>

#include "cabinet_filter.h"
#include "tool_panel.h"

class QComboBox;
class QLabel;
class QStackedWidget;
class QTableView;

namespace steadyturn {

class AddToolPanel;
class MessageLine;
class PapersPanel;
class SearchField;
struct ToolForm;

class CabinetPlace : public QWidget {
  Q_OBJECT
 public:
  explicit CabinetPlace(OpenShop& shop, QWidget* parent = nullptr);
  CabinetModel& model() { return model_; }
  void arrive();  // takes the focus

 signals:
  void checkWanted(const QString& tool);
  void historyWanted(const QString& tool);
  void importWanted(steadyturn::TableKind kind);
  void exportWanted(steadyturn::TableKind kind);

 private:
  QLayout* makeHead();
  void makeTable();
  void showSelected();
  void showCounts();
  QString selectedTool() const;
  void select(const std::string& tool);
  void change(ToolChange change, const QString& tool, const QString& reason);
  void group(const QString& tool, const QString& name);
  void add(const ToolForm& form);
  void closeForm();

  CabinetModel model_;
  CabinetFilter filter_;
  SearchField* search_ = nullptr;
  QComboBox* standing_ = nullptr;
  QLabel* count_ = nullptr;
  MessageLine* message_;
  QTableView* table_;
  QStackedWidget* below_;
  ToolPanel* panel_;
  AddToolPanel* form_;
  PapersPanel* papers_;
  std::string wanted_;  // to be selected when the table is refreshed
};

}  // namespace steadyturn
