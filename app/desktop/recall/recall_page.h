// What a tool's failed check puts in doubt: every tightening since its last good check, worst first or by vehicle, a
// decision about each, the closing, and the report.
#pragma once

#include <QWidget>
#include <optional>

#include "doubt_table.h"
#include "open_shop.h"

class QCheckBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QTableView;

namespace steadyturn {

class MessageLine;
class PathLine;

class RecallPage : public QWidget {
  Q_OBJECT
 public:
  RecallPage(OpenShop& shop, MessageLine* message, QWidget* parent = nullptr);
  void open(const std::string& tool);
  const std::optional<RecallList>& list() const { return list_; }

 private:
  QLayout* makeDecision();
  QLayout* makeEnd();
  void take(Result<RecallList> list, std::int64_t stayAt);
  void tell();
  void tellLine();
  void decide(RecallAction action);
  void close();
  void writeReport();
  const RecallLine* selected() const;

  OpenShop& shop_;
  MessageLine* message_;
  std::optional<RecallList> list_;
  DoubtTable model_;
  QLabel *words_, *line_;
  QCheckBox* byVehicle_;
  QTableView* table_;
  QLineEdit *reason_ = nullptr, *by_ = nullptr;
  QPushButton *accept_ = nullptr, *retorque_ = nullptr, *replace_ = nullptr, *close_ = nullptr;
  PathLine* report_ = nullptr;
};

}  // namespace steadyturn
