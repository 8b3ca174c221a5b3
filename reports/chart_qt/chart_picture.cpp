#include "chart_picture.h"

#include <QBuffer>
#include <QGraphicsScene>
#include <QImage>
#include <QSvgGenerator>

#include "make_chart.h"
#include "whole_write.h"

namespace steadyturn {

void paintChart(const ChartModel& chart, const ChartTheme& theme, QSize size, QPainter& painter,
                const QRectF& target) {
  QGraphicsScene scene;
  // The model outlives the picture: it is lent, not copied.
  auto drawn = makeChart(std::shared_ptr<const ChartModel>(std::shared_ptr<void>(), &chart), theme);
  auto* item = drawn.release();
  scene.addItem(item);
  item->resize(size);
  const QRectF source(QPointF(0, 0), QSizeF(size));
  scene.setSceneRect(source);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  scene.render(&painter, target, source);
}

Result<void> writeChartSvg(const ChartModel& chart, const ChartTheme& theme, QSize size, QIODevice& out) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QSvgGenerator svg;
  svg.setOutputDevice(&buffer);
  svg.setSize(size);
  svg.setViewBox(QRect(QPoint(0, 0), size));
  svg.setTitle(QString::fromStdString(chart.title));
  svg.setDescription(QString::fromStdString(chart.subtitle));
  QPainter painter(&svg);
  paintChart(chart, theme, size, painter, QRectF(QPointF(0, 0), QSizeF(size)));
  painter.end();
  return writeWhole(out, bytes);
}

Result<void> writeChartPng(const ChartModel& chart, const ChartTheme& theme, QSize size, QIODevice& out) {
  QImage image(size, QImage::Format_RGB32);
  image.fill(theme.background);
  QPainter painter(&image);
  paintChart(chart, theme, size, painter, QRectF(QPointF(0, 0), QSizeF(size)));
  painter.end();
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  if (!image.save(&buffer, "PNG")) {
    return refuse({.kind = ProblemKind::CannotCreate,
                   .field = "output",
                   .found = "PNG",
                   .accepted = "a picture that fits in memory"});
  }
  return writeWhole(out, bytes);
}

}  // namespace steadyturn
