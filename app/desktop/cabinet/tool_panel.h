// The selected tool in words, and what can be done with it.
#pragma once

#include <QFrame>
#include <optional>

#include "shop_views.h"

class QLabel;
class QLineEdit;
class QPushButton;
class QStackedWidget;

namespace steadyturn {

class Badge;

enum class ToolChange { Hold, Release, Retire };

class ToolPanel : public QFrame {
  Q_OBJECT
 public:
  explicit ToolPanel(QWidget* parent = nullptr);
  void display(const ToolOverview* overview);  // null: nothing is selected
  void ask(ToolChange change);                 // opens the line for the reason

 signals:
  void checkWanted(const QString& tool);
  void historyWanted(const QString& tool);
  void changeWanted(steadyturn::ToolChange change, const QString& tool, const QString& reason);

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QWidget* makeActions();
  QWidget* makeReason();
  void stopAsking();
  void giveReason();

  QString tool_;
  ToolChange asked_ = ToolChange::Hold;
  Badge* standing_;
  QLabel *title_, *facts_, *outlook_, *reasonLabel_;
  QPushButton *check_, *history_, *hold_, *release_, *retire_, *confirm_;
  QLineEdit* reason_;
  QStackedWidget* actions_;
};

}  // namespace steadyturn
