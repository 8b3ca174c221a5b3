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
  void setDeviation(std::optional<double> deviation, double limit);
  void setWrong(bool wrong);  // the text is no torque

 signals:
  void typed(const QString& text);
  void next();
  void up();
  void down();

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QLineEdit* line_;
  QLabel* deviation_;
};

}  // namespace steadyturn
