// Deviations of one set-point as dots between the two limits. A reading outside is a cross, so that shape says it
// too.
#pragma once

#include <QWidget>
#include <vector>

namespace steadyturn {

class DotsStrip : public QWidget {
  Q_OBJECT
 public:
  explicit DotsStrip(QWidget* parent = nullptr);
  void setFigures(const std::vector<double>& deviations, double limit, std::optional<double> mean);
  QSize sizeHint() const override { return {170, 44}; }
  QSize minimumSizeHint() const override { return {110, 36}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::vector<double> deviations_;
  double limit_ = 0;
  std::optional<double> mean_;
};

}  // namespace steadyturn
