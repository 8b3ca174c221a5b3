// Torque and preload of a screw over friction, with the torque of a specification laid across.
#pragma once

#include <QWidget>
#include <optional>
#include <vector>

#include "friction_range.h"

class QPainter;

namespace steadyturn {

class JointChart : public QWidget {
  Q_OBJECT
 public:
  explicit JointChart(QWidget* parent = nullptr);
  // `target`: N·m, of the specification that is judged.
  void display(std::vector<FrictionPoint> points, std::optional<double> target);
  QSize minimumSizeHint() const override { return {360, 220}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QRectF plot() const;
  void paintFrame(QPainter& painter, double mostTorque, double mostPreload) const;
  void paintCurves(QPainter& painter, double mostTorque, double mostPreload) const;

  std::vector<FrictionPoint> points_;
  std::optional<double> target_;
};

}  // namespace steadyturn
