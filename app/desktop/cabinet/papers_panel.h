// Papers about the tools, in a panel beneath the table: the due list, due days as a calendar, labels, the register.
#pragma once

#include <QFrame>

#include "issue_file.h"
#include "open_shop.h"
#include "worker.h"

class QComboBox;
class QLabel;

namespace steadyturn {

class MessageLine;
class PathLine;

enum class Paper { DueList, DueCalendar, Labels, OneLabel, Register };

class PapersPanel : public QFrame {
  Q_OBJECT
 public:
  explicit PapersPanel(OpenShop& shop, QWidget* parent = nullptr);
  void begin(const QString& selectedTool);  // takes the focus

 signals:
  void left();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  Paper paper() const;
  void suggest();
  void write();
  void start(const QString& path);
  void tell(const Result<IssuedFile>& done);

  OpenShop& shop_;
  QString tool_;
  QLabel* title_;
  QComboBox *paper_, *within_;
  QLabel* withinLabel_;
  PathLine* file_;
  MessageLine* message_;
  Worker worker_;  // last: it ends before what its results touch
};

}  // namespace steadyturn
