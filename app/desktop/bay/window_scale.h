// Window, target, part limit and what the selected wrench delivers, on one scale.
#pragma once

#include <QWidget>
#include <optional>

#include "choose.h"
#include "records.h"

namespace steadyturn {

class WindowScale : public QWidget {
  Q_OBJECT
 public:
  explicit WindowScale(QWidget* parent = nullptr);
  void display(const Fastener& fastener, const std::optional<Option>& option);
  QSize sizeHint() const override { return {420, 62}; }
  QSize minimumSizeHint() const override { return {240, 62}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  struct Scale {
    double low = 0, high = 0, target = 0;  // in the fastener's unit
    std::optional<double> limit;
    std::optional<std::pair<double, double>> delivered;
    double from = 0, to = 1;
  };
  std::optional<Scale> scale_;
};

}  // namespace steadyturn
