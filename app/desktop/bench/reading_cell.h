// One reading: the number as typed, and beneath it what it deviates. Enter goes on, Up and Down change the set-point.
#pragma once

#include <QLineEdit>
#include <QWidget>
#include <optional>

class QLabel;

namespace steadyturn {

class ReadingCell : public QWidget {
  Q_OBJECT
 public:
  ReadingCell(const QString& accessibleName, const QString& typed, QWidget* parent = nullptr);
  QLineEdit* line() { return line_; }
  // What the text comes to. A question is asked once the reading is finished, not while it is being typed.
  struct Figures {
    std::optional<double> deviation;
    double limit = 0;
    bool wrong = false;  // the text is no torque
    QString question;    // "19.8 lbf·ft would be 26.8 N·m"; empty: none
  };
  void setFigures(const Figures& figures);
  void put(const QString& text);  // as if it were typed, with Enter
  bool editing() const { return editing_; }

 signals:
  void typed(const QString& text);
  void finished();  // left with another text than it was entered with
  void next();
  void up();
  void down();

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void finish();

  QLineEdit* line_;
  QLabel* deviation_;
  bool editing_ = false;
};

}  // namespace steadyturn
