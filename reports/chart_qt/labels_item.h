// Names of the horizontal and vertical lines, written beside the lines themselves.
#pragma once

#include <QFont>
#include <QtCharts/QAbstractSeries>
#include <QtCharts/QChart>
#include <memory>
#include <optional>
#include <vector>

#include "chart_theme.h"

namespace steadyturn {

class LabelsItem : public QGraphicsItem {
 public:
  LabelsItem(QChart* chart, std::shared_ptr<const ChartModel> model, QAbstractSeries* placed, ChartTheme theme,
             const QFont& font);

  // To be called when the plot area has changed.
  void layOut();

  QRectF boundingRect() const override;
  void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

 private:
  struct Label {
    QString text;
    QRectF box;
    QColor colour;
  };
  void placeVertical(const VerticalLine& line);
  std::optional<double> lineUnder(const QRectF& box) const;  // where a horizontal one runs through it
  void placeHorizontal(const HorizontalLine& line, bool upper);

  QChart* chart_;
  std::shared_ptr<const ChartModel> model_;
  QAbstractSeries* placed_;
  ChartTheme theme_;
  QFont font_;
  std::vector<Label> labels_;
};

}  // namespace steadyturn
