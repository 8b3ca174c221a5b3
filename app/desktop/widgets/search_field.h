// A line to find things with as one types. Down goes to the list below, Escape empties it.
#pragma once

#include <QLineEdit>

class QAbstractItemView;

namespace steadyturn {

class SearchField : public QLineEdit {
  Q_OBJECT
 public:
  explicit SearchField(const QString& hint, QWidget* parent = nullptr);
  void setList(QAbstractItemView* list) { list_ = list; }

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QAbstractItemView* list_ = nullptr;
};

}  // namespace steadyturn
