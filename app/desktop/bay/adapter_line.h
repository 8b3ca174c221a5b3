// An adapter or extension on the wrench: what to measure, and the factor that follows.
#pragma once

#include <QWidget>
#include <optional>

#include "delivery.h"

class QLabel;
class QLineEdit;

namespace steadyturn {

class AdapterSketch;

class AdapterLine : public QWidget {
  Q_OBJECT
 public:
  explicit AdapterLine(QWidget* parent = nullptr);

 signals:
  // Nothing when all three are empty. Typing that makes no sense yet is said here and not told.
  void changed(const std::optional<steadyturn::Adapter>& adapter);
  void measuring(bool now);  // the sketch needs room

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void read();
  void showSketch();
  QLineEdit *length_, *offset_, *angle_;
  QLabel* words_;
  AdapterSketch* sketch_;
};

}  // namespace steadyturn
