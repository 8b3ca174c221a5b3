// What to measure on a wrench with an adapter: L from the middle of the hand to the drive, E from the drive to the
// fastener, θ between them. Drawn to the lengths and the angle that are typed.
#pragma once

#include <QWidget>

#include "delivery.h"

namespace steadyturn {

class AdapterSketch : public QWidget {
  Q_OBJECT
 public:
  explicit AdapterSketch(QWidget* parent = nullptr);
  void display(const Adapter& adapter);
  QSize sizeHint() const override { return {420, 84}; }
  QSize minimumSizeHint() const override { return {240, 84}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  Adapter adapter_;
};

}  // namespace steadyturn
