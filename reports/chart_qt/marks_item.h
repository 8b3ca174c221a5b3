// The marks of one point series with their error bars, drawn in one go: an item for each point is what makes a chart
// slow.
#pragma once

#include <QtCharts/QAbstractSeries>
#include <QtCharts/QChart>
#include <memory>

#include "chart_theme.h"
#include "thinning.h"

namespace steadyturn {

class MarksItem : public QGraphicsItem {
 public:
  // `series` lies within the chart's model, which `model` keeps alive; `placed` is a series of the chart whose axes
  // count.
  MarksItem(QChart* chart, std::shared_ptr<const ChartModel> model, const PointSeries* series,
            QAbstractSeries* placed, const QColor& colour, const QColor& ground, AxisRange across);

  // To be called when the plot area has changed: thins to the pixels at hand.
  void layOut();

  QRectF boundingRect() const override;
  void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

 private:
  struct Spot {
    QPointF at;
    double barTop = 0, barBottom = 0;
    const ChartPoint* point = nullptr;
  };
  void drawBars(QPainter& painter) const;

  QChart* chart_;
  std::shared_ptr<const ChartModel> model_;
  const PointSeries* series_;
  QAbstractSeries* placed_;
  QColor colour_, ground_;
  AxisRange across_;
  std::vector<Spot> spots_;
};

// How high above the foot of the plot events stand, in pixels.
inline constexpr double floorHeight = 9;

// The outline of a mark around (0, 0), for charts and legends alike.
QPolygonF markShape(Mark mark, double size);

}  // namespace steadyturn
