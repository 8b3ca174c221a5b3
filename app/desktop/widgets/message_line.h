// What the program has to say, in a line of the page instead of a dialog that stops the work: tone, text, what can be
// done.
#pragma once

#include <QFrame>
#include <functional>
#include <vector>

#include "problem.h"
#include "theme.h"

class QHBoxLayout;
class QLabel;
class QPushButton;

namespace steadyturn {

class MessageLine : public QFrame {
  Q_OBJECT
 public:
  struct Action {
    QString label;  // with its mnemonic
    std::function<void()> act;
  };
  explicit MessageLine(QWidget* parent = nullptr);
  void say(Tone tone, const QString& text, const std::vector<Action>& actions = {});
  void sayProblems(const Problems& problems);
  void clear();
  void setLasting();  // a notice that stays as long as its cause: it can't be dismissed
  QString text() const;
  Tone tone() const { return tone_; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  Tone tone_ = Tone::Quiet;
  QLabel* label_;
  QHBoxLayout* actions_;
  QPushButton* dismiss_;
};

}  // namespace steadyturn
