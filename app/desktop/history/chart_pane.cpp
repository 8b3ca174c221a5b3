#include "chart_pane.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "marks_item.h"
#include "text.h"
#include "theme.h"

namespace steadyturn {
namespace {

constexpr double reach = 12;      // pixels from a mark that still point at it
constexpr double zoomStep = 0.8;  // of what is shown, for one notch of the wheel or one key
constexpr double moveStep = 0.15;
constexpr double smallestShare = 1e-3;  // of the whole that can still be looked at

double span(AxisRange range) { return range.high - range.low; }

AxisRange scaled(AxisRange range, double factor, double about) {
  return {about + (range.low - about) * factor, about + (range.high - about) * factor};
}

// Within the whole, and not smaller than can be made out.
AxisRange within(AxisRange range, AxisRange whole) {
  const double width = std::clamp(span(range), smallestShare * span(whole), span(whole));
  const double middle = (range.low + range.high) / 2;
  const double low = std::clamp(middle - width / 2, whole.low, whole.high - width);
  return {low, low + width};
}

const ChartTheme& themeOf(const QWidget& widget) { return isDark(widget.palette()) ? darkTheme() : lightTheme(); }

}  // namespace

ChartPane::ChartPane(const QString& name, QWidget* parent) : QChartView(parent) {
  setAccessibleName(name);
  setFrameShape(QFrame::NoFrame);
  setRenderHint(QPainter::Antialiasing);
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  viewport()->setMouseTracking(true);
  clear();
}

ChartPane::~ChartPane() = default;

void ChartPane::show(std::shared_ptr<const ChartModel> model) {
  pointAt(nullptr);
  model_ = std::move(model);
  window_.reset();
  draw();
}

void ChartPane::clear() {
  pointAt(nullptr);
  model_.reset();
  window_.reset();
  draw();
}

void ChartPane::draw() {
  const ChartTheme& theme = themeOf(*this);
  setBackgroundBrush(theme.background);
  const std::unique_ptr<QChart> before(chart());
  std::unique_ptr<QChart> now;
  if (model_) {
    now = makeChart(model_, theme, window_);
  } else {
    now = std::make_unique<QChart>();
    now->setBackgroundBrush(theme.background);
  }
  setChart(now.release());
}

void ChartPane::look(ChartWindow window) {
  if (!model_) return;
  const ChartWindow whole = wholeWindow(*model_);
  window = {within(window.across, whole.across), within(window.values, whole.values)};
  const auto fills = [](AxisRange range, AxisRange all) { return span(range) > 0.999 * span(all); };
  window_.reset();
  if (!fills(window.across, whole.across) || !fills(window.values, whole.values)) window_ = window;
  draw();
}

void ChartPane::zoom(double factor, QPointF about, bool acrossToo) {
  if (!model_) return;
  const ChartWindow seen = window_.value_or(wholeWindow(*model_));
  const QRectF plot = chart()->plotArea();
  const QPointF at = chart()->mapFromScene(mapToScene(about.toPoint()));
  const double x = std::clamp((at.x() - plot.left()) / plot.width(), 0.0, 1.0);
  const double y = std::clamp((plot.bottom() - at.y()) / plot.height(), 0.0, 1.0);
  ChartWindow window = seen;
  if (acrossToo) {
    window.across = scaled(seen.across, factor, seen.across.low + x * span(seen.across));
  } else {
    window.values = scaled(seen.values, factor, seen.values.low + y * span(seen.values));
  }
  look(window);
}

void ChartPane::move(double across, double values) {
  if (!model_) return;
  ChartWindow window = window_.value_or(wholeWindow(*model_));
  const double x = across * span(window.across);
  const double y = values * span(window.values);
  look({{window.across.low + x, window.across.high + x}, {window.values.low + y, window.values.high + y}});
}

void ChartPane::showAll() {
  window_.reset();
  draw();
}

QPointF ChartPane::placeOf(const PointSeries& series, const ChartPoint& point) const {
  const ChartWindow seen = window_.value_or(wholeWindow(*model_));
  const QRectF plot = chart()->plotArea();
  const double x = (model_->across.place(point.date) - seen.across.low) / span(seen.across);
  const double y = (point.value - seen.values.low) / span(seen.values);
  const QPointF at(plot.left() + x * plot.width(),
                   series.onFloor ? plot.bottom() - floorHeight : plot.bottom() - y * plot.height());
  return chart()->mapToScene(at);
}

std::vector<ChartPane::Spot> ChartPane::spots() const {
  std::vector<Spot> all;
  if (!model_) return all;
  for (const auto& series : model_->points) {
    for (const auto& point : series.points) all.push_back({&point, placeOf(series, point)});
  }
  std::ranges::stable_sort(all, {}, [](const Spot& spot) { return spot.at.x(); });
  return all;
}

void ChartPane::pointAt(const ChartPoint* point) {
  if (pointed_ == point) return;
  pointed_ = point;
  emit told(point ? fromText(point->note) : QString());
  setAccessibleDescription(point ? fromText(point->note) : QString());
  viewport()->update();
}

void ChartPane::point(std::int64_t record) {
  const auto all = spots();
  const auto found =
      std::ranges::find_if(all, [record](const Spot& spot) { return record != 0 && spot.point->record == record; });
  pointAt(found == all.end() ? nullptr : found->point);
}

void ChartPane::step(int by) {
  const auto all = spots();
  if (all.empty()) return;
  const auto now = std::ranges::find(all, pointed_, &Spot::point);
  const auto last = static_cast<std::ptrdiff_t>(all.size()) - 1;
  const std::ptrdiff_t index =
      now == all.end() ? (by > 0 ? 0 : last) : std::clamp<std::ptrdiff_t>(now - all.begin() + by, 0, last);
  const Spot& next = all[static_cast<std::size_t>(index)];
  pointAt(next.point);
  // A mark that lies beyond the window is brought into it.
  if (!window_) return;
  const double at = model_->across.place(next.point->date);
  if (at >= window_->across.low && at <= window_->across.high) return;
  const double half = span(window_->across) / 2;
  look({{at - half, at + half}, window_->values});
}

void ChartPane::wheelEvent(QWheelEvent* event) {
  // Alt turns a wheel sideways, some mice do so by themselves: whichever of the two moved counts.
  const QPoint turned = event->angleDelta();
  const double notches = (turned.y() != 0 ? turned.y() : turned.x()) / 120.0;
  zoom(std::pow(zoomStep, notches), event->position(), !event->modifiers().testFlag(Qt::ShiftModifier));
  event->accept();
}

void ChartPane::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  dragFrom_ = event->pos();
  dragged_ = false;
}

void ChartPane::mouseMoveEvent(QMouseEvent* event) {
  if (dragFrom_ && model_) {
    const QPoint by = event->pos() - *dragFrom_;
    if (!dragged_ && by.manhattanLength() < reach / 2) return;
    dragged_ = true;
    const QRectF plot = chart()->plotArea();
    move(-by.x() / plot.width(), by.y() / plot.height());
    dragFrom_ = event->pos();
    return;
  }
  const QPointF at = mapToScene(event->pos());
  const ChartPoint* nearest = nullptr;
  double best = reach;
  for (const auto& spot : spots()) {
    const double distance = QLineF(spot.at, at).length();
    if (distance >= best) continue;
    best = distance;
    nearest = spot.point;
  }
  pointAt(nearest);
}

void ChartPane::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  if (dragFrom_ && !dragged_ && pointed_ && pointed_->record != 0) emit taken(pointed_->record);
  dragFrom_.reset();
}

void ChartPane::mouseDoubleClickEvent(QMouseEvent*) { showAll(); }

void ChartPane::leaveEvent(QEvent* event) {
  QChartView::leaveEvent(event);
  if (!hasFocus()) pointAt(nullptr);
}

void ChartPane::keyPressEvent(QKeyEvent* event) {
  const bool shift = event->modifiers().testFlag(Qt::ShiftModifier);
  const QPointF middle = viewport()->rect().center();
  switch (event->key()) {
    case Qt::Key_Plus:
    case Qt::Key_Equal:
      return zoom(zoomStep, middle, true);
    case Qt::Key_Minus:
      return zoom(1 / zoomStep, middle, true);
    case Qt::Key_Left:
      return shift ? move(-moveStep, 0) : step(-1);
    case Qt::Key_Right:
      return shift ? move(moveStep, 0) : step(1);
    case Qt::Key_Up:
      if (shift) return move(0, moveStep);
      return zoom(zoomStep, middle, false);
    case Qt::Key_Down:
      if (shift) return move(0, -moveStep);
      return zoom(1 / zoomStep, middle, false);
    case Qt::Key_Home:
      return showAll();
    case Qt::Key_Return:
    case Qt::Key_Enter:
      if (pointed_ && pointed_->record != 0) emit taken(pointed_->record);
      return;
    default:
      QChartView::keyPressEvent(event);
  }
}

void ChartPane::focusInEvent(QFocusEvent* event) {
  QChartView::focusInEvent(event);
  viewport()->update();
}

void ChartPane::focusOutEvent(QFocusEvent* event) {
  QChartView::focusOutEvent(event);
  pointAt(nullptr);
  viewport()->update();
}

void ChartPane::changeEvent(QEvent* event) {
  QChartView::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) draw();
}

void ChartPane::drawForeground(QPainter* painter, const QRectF& rect) {
  QChartView::drawForeground(painter, rect);
  const ChartTheme& theme = themeOf(*this);
  painter->setBrush(Qt::NoBrush);
  if (pointed_) {
    for (const auto& series : model_->points) {
      for (const auto& point : series.points) {
        if (&point != pointed_) continue;
        painter->setPen(QPen(theme.text, 1.6));
        painter->drawEllipse(placeOf(series, point), 8, 8);
      }
    }
  }
  if (!hasFocus()) return;
  painter->setPen(QPen(palette().color(QPalette::Highlight), 2));
  painter->drawRect(mapToScene(viewport()->rect()).boundingRect().adjusted(1, 1, -1, -1));
}

}  // namespace steadyturn
