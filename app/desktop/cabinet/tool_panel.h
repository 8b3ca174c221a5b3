// The selected tool in words, and what can be done with it.
#pragma once

#include <QFrame>
#include <map>
#include <optional>

#include "reason_line.h"
#include "shop_views.h"

class QLabel;
class QPushButton;
class QStackedWidget;

namespace steadyturn {

class Badge;
class GroupLine;

class ToolPanel : public QFrame {
  Q_OBJECT
 public:
  explicit ToolPanel(QWidget* parent = nullptr);
  // The shop's own groups of tools that are alike, the name by tool. To be told before display().
  void setGroups(const std::map<std::string, std::string>& groups) { groups_ = groups; }
  // Null: nothing is selected. Not `known`: where it stands is still being worked out.
  void display(const ToolOverview* overview, bool known = true);
  void ask(ToolChange change);  // opens the line for the reason
  void stopAsking();

 signals:
  void checkWanted(const QString& tool);
  void historyWanted(const QString& tool);
  void changeWanted(steadyturn::ToolChange change, const QString& tool, const QString& reason);
  void groupWanted(const QString& tool, const QString& group);  // empty: as maker, kind and maximum say
  void groupUnnamed();

 private:
  QWidget* makeActions();
  QString alikeText() const;
  void askGroup();

  QString tool_;
  std::map<std::string, std::string> groups_;
  Badge* standing_;
  QLabel *title_, *facts_, *outlook_;
  QPushButton *check_ = nullptr, *history_ = nullptr, *alike_ = nullptr, *hold_ = nullptr, *release_ = nullptr,
              *retire_ = nullptr;
  ReasonLine* reason_;
  GroupLine* group_;
  QStackedWidget* actions_;
};

}  // namespace steadyturn
