// Title and sentences of a chart, flush left; each is shortened by itself where the chart is narrow.
#pragma once

#include <QFont>
#include <QtCharts/QChart>
#include <memory>

#include "chart_theme.h"

namespace steadyturn {

class TitleItem : public QGraphicsItem {
 public:
  TitleItem(QChart* chart, std::shared_ptr<const ChartModel> model, const ChartTheme& theme, const QFont& title,
            const QFont& sentence);

  double height() const;  // what the chart's upper margin must leave
  // To be called when the chart's size has changed.
  void layOut();

  QRectF boundingRect() const override;
  void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

 private:
  QChart* chart_;
  std::shared_ptr<const ChartModel> model_;
  QColor text_, quietText_;
  QFont title_, sentence_;
};

}  // namespace steadyturn
