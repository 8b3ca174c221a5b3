#include "dots_strip.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "text.h"
#include "theme.h"
#include "tolerance.h"

namespace steadyturn {
namespace {

// Half as far again as the limit; what lies beyond is drawn at the edge.
constexpr double reach = 1.5;

}  // namespace

DotsStrip::DotsStrip(QWidget* parent) : QWidget(parent) { setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed); }

void DotsStrip::setFigures(const std::vector<double>& deviations, double limit, std::optional<double> mean) {
  deviations_ = deviations;
  limit_ = limit;
  mean_ = mean;
  const auto outside = std::count_if(deviations.begin(), deviations.end(),
                                     [limit](double deviation) { return !atMost(std::abs(deviation), limit); });
  setAccessibleName(
      deviations.empty()
          ? tr("no readings yet")
          : tr("%1 readings, %2 outside %3").arg(deviations.size()).arg(outside).arg(plusMinusText(limit)));
  update();
}

void DotsStrip::paintEvent(QPaintEvent*) {
  if (limit_ <= 0) return;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const QColor text = palette().color(QPalette::WindowText);
  const QColor ground = palette().color(QPalette::Window);
  const double half = (width() - 16) / 2.0;
  const double middle = height() / 2.0;
  const auto x = [&](double percent) {
    return width() / 2.0 + std::clamp(percent / (limit_ * reach), -1.0, 1.0) * half;
  };
  painter.fillRect(QRectF(QPointF(x(-limit_), middle - 9), QPointF(x(limit_), middle + 9)),
                   blend(toneColour(Tone::Good, palette()), ground, 0.16));
  painter.setPen(QPen(blend(text, ground, 0.4), 1));
  painter.drawLine(QPointF(8, middle), QPointF(width() - 8, middle));
  painter.setPen(QPen(text, 1.5));
  for (const double limit : {-limit_, limit_}) {
    painter.drawLine(QPointF(x(limit), middle - 12), QPointF(x(limit), middle + 12));
  }
  if (mean_) painter.drawLine(QPointF(x(*mean_), middle - 7), QPointF(x(*mean_), middle + 7));
  for (const double deviation : deviations_) {
    const QPointF at(x(deviation), middle);
    if (atMost(std::abs(deviation), limit_)) {
      painter.setPen(Qt::NoPen);
      painter.setBrush(toneColour(Tone::Info, palette()));
      painter.drawEllipse(at, 3.2, 3.2);
    } else {
      painter.setPen(QPen(toneColour(Tone::Bad, palette()), 2));
      painter.drawLine(at + QPointF(-4, -4), at + QPointF(4, 4));
      painter.drawLine(at + QPointF(-4, 4), at + QPointF(4, -4));
    }
  }
}

}  // namespace steadyturn
