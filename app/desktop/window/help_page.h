// A page of text in the window; Escape or the button leads back to where one was.
#pragma once

#include <QWidget>

class QPushButton;
class QTextBrowser;

namespace steadyturn {

class HelpPage : public QWidget {
  Q_OBJECT
 public:
  explicit HelpPage(QWidget* parent = nullptr);
  void display(const QString& html);

 signals:
  void left();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QTextBrowser* text_;
  QPushButton* back_;
};

}  // namespace steadyturn
