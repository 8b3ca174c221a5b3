// A tool is held, released or retired for a reason, which is asked for in a line of the page.
#pragma once

#include <QWidget>

class QLabel;
class QLineEdit;
class QPushButton;

namespace steadyturn {

enum class ToolChange { Hold, Release, Retire };

class ReasonLine : public QWidget {
  Q_OBJECT
 public:
  explicit ReasonLine(QWidget* parent = nullptr);
  // Takes the focus; `proposed` is selected, so that typing replaces it and Enter takes it.
  void ask(ToolChange change, const QString& tool, const QString& proposed = {});

 signals:
  void given(steadyturn::ToolChange change, const QString& tool, const QString& reason);
  void cancelled();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void give();

  ToolChange change_ = ToolChange::Hold;
  QString tool_;
  QLabel* question_;
  QLineEdit* reason_;
  QPushButton* confirm_;
};

}  // namespace steadyturn
