// Says that the readings below replace a stored check, and asks why.
#pragma once

#include <QFrame>

class QLabel;
class QLineEdit;

namespace steadyturn {

class BenchModel;

class CorrectionLine : public QFrame {
  Q_OBJECT
 public:
  explicit CorrectionLine(BenchModel& model, QWidget* parent = nullptr);
  QLineEdit* reason() { return reason_; }

 signals:
  void given();  // Enter: on to the readings
  void givenUp();

 private:
  void showCorrection();

  BenchModel& model_;
  QLabel* question_;
  QLineEdit* reason_;
};

}  // namespace steadyturn
