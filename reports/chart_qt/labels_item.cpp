#include "labels_item.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>

#include "axis_ticks.h"

namespace steadyturn {
namespace {

constexpr double gap = 4;        // between a line and its label
constexpr double lineWidth = 1;  // half of the thickest line's, and what smoothing adds
constexpr int topRows = 3;       // rows for the names of vertical lines

}  // namespace

LabelsItem::LabelsItem(QChart* chart, std::shared_ptr<const ChartModel> model, QAbstractSeries* placed,
                       ChartTheme theme, const QFont& font)
    : QGraphicsItem(chart), chart_(chart), model_(std::move(model)), placed_(placed), theme_(theme), font_(font) {
  setAcceptedMouseButtons(Qt::NoButton);
}

void LabelsItem::layOut() {
  prepareGeometryChange();
  labels_.clear();
  const double middle = chart_->plotArea().center().y();
  for (const auto& line : model_->horizontals) {
    // A guard band's name stands inside the limits, every other one outside.
    const bool above = chart_->mapToPosition({0, line.value}, placed_).y() < middle;
    // Shares rise from the left: below a target there the curve would be hidden.
    placeHorizontal(line, model_->plainValues || above != (line.role == Role::Guard));
  }
  // The rarer the line, the surer its label: adjustments come last and give way.
  for (const auto& line : model_->verticals) {
    if (line.role != Role::Adjustment) placeVertical(line);
  }
  for (const auto& line : model_->verticals) {
    if (line.role == Role::Adjustment) placeVertical(line);
  }
}

void LabelsItem::placeHorizontal(const HorizontalLine& line, bool upper) {
  const QFontMetricsF metrics(font_);
  const QRectF plot = chart_->plotArea();
  const QString text = QString::fromStdString(line.name);
  const double y = chart_->mapToPosition({0, line.value}, placed_).y();
  if (y < plot.top() || y > plot.bottom()) return;
  QRectF box(0, 0, metrics.horizontalAdvance(text) + 2, metrics.height());
  box.moveLeft(plot.left() + gap);
  if (upper) {
    box.moveBottom(y - 1);
  } else {
    box.moveTop(y + 1);
  }
  // Never over an axis, nor over another line where that can be helped: the name stands on the line's other side.
  QRectF across = box;
  if (box.top() < y) {
    across.moveTop(y + 1);
  } else {
    across.moveBottom(y - 1);
  }
  const bool fits = box.top() >= plot.top() && box.bottom() <= plot.bottom();
  if (!fits || (lineUnder(box) && plot.contains(across) && !lineUnder(across))) box = across;
  // Where lines lie close, names stand side by side.
  const auto taken = [&] {
    return std::ranges::any_of(labels_, [&](const Label& other) { return other.box.intersects(box); });
  };
  while (taken() && box.right() < plot.right()) box.moveLeft(box.left() + box.width() / 2);
  if (taken()) return;
  labels_.push_back({text, box, theme_.colour(line.role)});
}

void LabelsItem::placeVertical(const VerticalLine& line) {
  const QFontMetricsF metrics(font_);
  const QRectF plot = chart_->plotArea();
  const QString text = QString::fromStdString(line.name);
  const double x = chart_->mapToPosition({model_->across.place(line.date), 0}, placed_).x();
  if (x < plot.left() || x > plot.right()) return;
  QRectF box(0, 0, metrics.horizontalAdvance(text) + 2, metrics.height());
  const auto isFree = [&] {
    if (box.left() < plot.left() || box.right() > plot.right()) return false;
    return std::ranges::none_of(labels_,
                                [&](const Label& other) { return other.box.adjusted(-3, 0, 3, 0).intersects(box); });
  };
  // Over a line only where there is no other place.
  for (const bool overLines : {false, true}) {
    for (int row = 0; row < topRows; ++row) {
      box.moveTop(plot.top() + 2 + row * metrics.height());
      if (const auto y = lineUnder(box); y && !overLines) box.moveTop(*y + lineWidth);
      if (!overLines && lineUnder(box)) continue;
      for (const double left : {x + gap, x - gap - box.width()}) {
        box.moveLeft(left);
        if (!isFree()) continue;
        labels_.push_back({text, box, theme_.colour(line.role)});
        return;
      }
    }
  }
}

std::optional<double> LabelsItem::lineUnder(const QRectF& box) const {
  for (const auto& line : model_->horizontals) {
    const double y = chart_->mapToPosition({0, line.value}, placed_).y();
    if (box.top() - lineWidth < y && y < box.bottom() + lineWidth) return y;
  }
  return std::nullopt;
}

QRectF LabelsItem::boundingRect() const { return chart_->plotArea(); }

void LabelsItem::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) {
  painter->setFont(font_);
  for (const auto& label : labels_) {
    painter->fillRect(label.box, theme_.background);
    painter->setPen(label.colour);
    painter->drawText(label.box, Qt::AlignCenter | Qt::TextSingleLine | Qt::TextDontClip, label.text);
  }
}

}  // namespace steadyturn
