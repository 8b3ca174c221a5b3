// A chart that can be looked into. Wheel and + − zoom (with Shift: up and down alone), dragging and Shift+arrows
// move, Home or a double click shows all; ← and → go from mark to mark, Enter or a click takes one.
#pragma once

#include <QtCharts/QChartView>
#include <memory>
#include <optional>

#include "make_chart.h"

namespace steadyturn {

class ChartPane : public QChartView {
  Q_OBJECT
 public:
  explicit ChartPane(const QString& name, QWidget* parent = nullptr);
  ~ChartPane() override;

  void show(std::shared_ptr<const ChartModel> model);  // whole
  void clear();
  bool wholeShown() const { return !window_.has_value(); }
  std::optional<ChartWindow> window() const { return window_; }
  const ChartPoint* pointed() const { return pointed_; }

  void zoom(double factor, QPointF about, bool acrossToo);  // factor < 1 shows less; about in view coordinates
  void showAll();
  void point(std::int64_t record);  // at the mark that stands for it; 0 or unknown: at nothing

 signals:
  void told(const QString& note);  // of the mark pointed at; empty when there is none
  void taken(qint64 record);       // a mark that stands for a record was clicked or entered

 protected:
  void wheelEvent(QWheelEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void changeEvent(QEvent* event) override;
  void drawForeground(QPainter* painter, const QRectF& rect) override;

 private:
  struct Spot {
    const ChartPoint* point;
    QPointF at;  // in the scene
  };
  void draw();
  void look(ChartWindow window);  // kept within what the chart holds
  void move(double across, double values);
  void pointAt(const ChartPoint* point);
  void step(int by);
  std::vector<Spot> spots() const;  // from left to right
  QPointF placeOf(const PointSeries& series, const ChartPoint& point) const;

  std::shared_ptr<const ChartModel> model_;
  std::optional<ChartWindow> window_;
  const ChartPoint* pointed_ = nullptr;  // within model_
  std::optional<QPoint> dragFrom_;
  bool dragged_ = false;
};

}  // namespace steadyturn
