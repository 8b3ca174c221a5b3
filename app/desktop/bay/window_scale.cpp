#include "window_scale.h"

#include <QPainter>
#include <algorithm>

#include "text.h"
#include "theme.h"

namespace steadyturn {

WindowScale::WindowScale(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void WindowScale::display(const Fastener& fastener, const std::optional<Option>& option) {
  const Demand demand{
      .target = fastener.targetTorque(),
      .low = fastener.low ? std::optional(StatedTorque{*fastener.low, fastener.unit}) : std::nullopt,
      .high = fastener.high ? std::optional(StatedTorque{*fastener.high, fastener.unit}) : std::nullopt,
      .partLimit = std::nullopt,
      .adapter = std::nullopt};
  const Window window = windowOf(demand);
  Scale scale;
  scale.low = window.low.in(fastener.unit);
  scale.high = window.high.in(fastener.unit);
  scale.target = fastener.target;
  scale.limit = fastener.partLimit;
  scale.from = scale.low;
  scale.to = scale.limit ? std::max(scale.high, *scale.limit) : scale.high;
  QString words = windowOf(demand).low == window.low
                      ? tr("Window %1 to %2").arg(torqueText(window.low), torqueText(window.high))
                      : QString();
  if (option && option->delivery.interval.high) {
    const DeliveredRange& range = option->delivery.interval;
    scale.delivered = {range.low.in(fastener.unit), range.high->in(fastener.unit)};
    scale.from = std::min(scale.from, scale.delivered->first);
    scale.to = std::max(scale.to, scale.delivered->second);
    words += tr(", %1 delivers %2 to %3")
                 .arg(fromText(option->tool), torqueText(range.low, 3), torqueText(*range.high, 3));
  }
  const double room = 0.12 * (scale.to - scale.from);
  scale.from -= room;
  scale.to += room;
  scale_ = scale;
  setAccessibleName(words);
  update();
}

void WindowScale::paintEvent(QPaintEvent*) {
  if (!scale_ || scale_->to <= scale_->from) return;
  const Scale& scale = *scale_;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const QColor ink = palette().color(QPalette::WindowText);
  const QColor ground = palette().color(QPalette::Window);
  const auto x = [&](double value) { return (value - scale.from) / (scale.to - scale.from) * (width() - 2) + 1; };
  const double axis = 24;
  const int textTop = 42;
  painter.fillRect(QRectF(QPointF(x(scale.low), axis - 11), QPointF(x(scale.high), axis + 11)),
                   blend(toneColour(Tone::Good, palette()), ground, 0.22));
  painter.setPen(QPen(blend(ink, ground, 0.5), 1));
  painter.drawLine(QPointF(0, axis), QPointF(width(), axis));
  if (scale.delivered) {
    painter.fillRect(
        QRectF(QPointF(x(scale.delivered->first), axis - 4), QPointF(x(scale.delivered->second), axis + 4)),
        toneColour(Tone::Info, palette()));
  }
  const auto mark = [&](double value, double half, double width, const QColor& colour, const QString& text) {
    painter.setPen(QPen(colour, width));
    painter.drawLine(QPointF(x(value), axis - half), QPointF(x(value), axis + half));
    const int wide = painter.fontMetrics().horizontalAdvance(text);
    const int left = std::clamp(static_cast<int>(x(value)) - wide / 2, 0, std::max(0, this->width() - wide));
    painter.drawText(left, textTop + painter.fontMetrics().ascent(), text);
  };
  mark(scale.low, 11, 1.4, ink, fromText(writeRounded(scale.low)));
  mark(scale.high, 11, 1.4, ink, fromText(writeRounded(scale.high)));
  mark(scale.target, 15, 2.4, ink, {});
  if (scale.limit) {
    const QString text = tr("limit %1").arg(fromText(writeRounded(*scale.limit)));
    mark(*scale.limit, 16, 3, toneColour(Tone::Bad, palette()), *scale.limit > scale.high ? text : QString());
  }
}

}  // namespace steadyturn
