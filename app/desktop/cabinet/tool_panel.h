// The selected tool in words, and what can be done with it.
#pragma once

#include <QFrame>
#include <optional>

#include "reason_line.h"
#include "shop_views.h"

class QLabel;
class QPushButton;
class QStackedWidget;

namespace steadyturn {

class Badge;

class ToolPanel : public QFrame {
  Q_OBJECT
 public:
  explicit ToolPanel(QWidget* parent = nullptr);
  // Null: nothing is selected. Not `known`: where it stands is still being worked out.
  void display(const ToolOverview* overview, bool known = true);
  void ask(ToolChange change);  // opens the line for the reason

 signals:
  void checkWanted(const QString& tool);
  void historyWanted(const QString& tool);
  void changeWanted(steadyturn::ToolChange change, const QString& tool, const QString& reason);

 private:
  QWidget* makeActions();
  void stopAsking();

  QString tool_;
  Badge* standing_;
  QLabel *title_, *facts_, *outlook_;
  QPushButton *check_, *history_, *hold_, *release_, *retire_;
  ReasonLine* reason_;
  QStackedWidget* actions_;
};

}  // namespace steadyturn
