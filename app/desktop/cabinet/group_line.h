// Which tools one tool is like, said in a line of the page: the name that they share, or as the program groups them.
#pragma once

#include <QWidget>

class QComboBox;
class QLabel;
class QPushButton;

namespace steadyturn {

class GroupLine : public QWidget {
  Q_OBJECT
 public:
  explicit GroupLine(QWidget* parent = nullptr);
  // Takes the focus. `group`: its name now, empty where it has none; `names`: of all groups, to choose from.
  void ask(const QString& tool, const QString& group, const QStringList& names);

 signals:
  void given(const QString& tool, const QString& group);  // empty: by maker, kind and maximum
  void unnamed();                                         // told to take a name where none is typed
  void cancelled();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void give();

  QString tool_;
  QLabel* question_;
  QComboBox* name_;
  QPushButton* automatic_;
};

}  // namespace steadyturn
