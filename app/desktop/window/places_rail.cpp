#include "places_rail.h"

#include <QButtonGroup>
#include <QKeySequence>
#include <QPainter>
#include <QVBoxLayout>

#include "theme.h"

namespace steadyturn {
namespace {

constexpr int railWidth = 112;
constexpr int buttonHeight = 76;
constexpr int scaleWidth = 14;

}  // namespace

QString placeName(Place place) {
  switch (place) {
    case Place::Bench:
      return PlacesRail::tr("Bench");
    case Place::Cabinet:
      return PlacesRail::tr("Cabinet");
    case Place::Bay:
      return PlacesRail::tr("Bay");
    case Place::History:
      return PlacesRail::tr("History");
  }
  return {};
}

QString placePurpose(Place place) {
  switch (place) {
    case Place::Bench:
      return PlacesRail::tr("record a check");
    case Place::Cabinet:
      return PlacesRail::tr("all tools");
    case Place::Bay:
      return PlacesRail::tr("tighten a joint");
    case Place::History:
      return PlacesRail::tr("one tool's past");
  }
  return {};
}

QKeySequence placeShortcut(Place place) {
  return QKeySequence(QStringLiteral("Ctrl+%1").arg(static_cast<int>(place) + 1));
}

RailButton::RailButton(Place place, QWidget* parent) : QAbstractButton(parent), place_(place) {
  setCheckable(true);
  setText(placeName(place));
  setAccessibleName(placeName(place));
  setAccessibleDescription(placePurpose(place));
  setToolTip(hint(place));
  setFocusPolicy(Qt::TabFocus);
}

QString RailButton::hint(Place place) {
  return QStringLiteral("%1: %2 (%3)")
      .arg(placeName(place), placePurpose(place), placeShortcut(place).toString(QKeySequence::NativeText));
}

QSize RailButton::sizeHint() const { return {railWidth, buttonHeight}; }

void RailButton::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const QColor ink = palette().color(isEnabled() ? QPalette::WindowText : QPalette::PlaceholderText);
  const QColor accent = palette().color(QPalette::Highlight);
  if (isChecked()) painter.fillRect(rect().adjusted(0, 0, -scaleWidth, 0), palette().color(QPalette::Window));
  if (hasFocus()) {
    painter.setPen(QPen(accent, 2));
    painter.drawRect(rect().adjusted(2, 2, -scaleWidth - 3, -3));
  }
  QFont name = font();
  name.setPointSizeF(name.pointSizeF() * 1.2);
  name.setBold(isChecked());
  painter.setFont(name);
  painter.setPen(ink);
  painter.drawText(QRect(12, 0, width() - scaleWidth - 12, height() / 2 + 6), Qt::AlignLeft | Qt::AlignBottom,
                   text());
  QFont small = font();
  small.setPointSizeF(small.pointSizeF() * 0.85);
  painter.setFont(small);
  painter.setPen(palette().color(QPalette::PlaceholderText));
  painter.drawText(QRect(12, height() / 2 + 8, width() - scaleWidth - 12, height() / 2), Qt::AlignLeft | Qt::AlignTop,
                   placeShortcut(place_).toString(QKeySequence::NativeText));
  if (!isChecked()) return;
  const double middle = height() / 2.0;
  painter.setPen(Qt::NoPen);
  painter.setBrush(accent);
  painter.drawPolygon(
      QPolygonF{{width() - scaleWidth - 12.0, middle}, {width() - 2.0, middle - 8}, {width() - 2.0, middle + 8}});
}

PlacesRail::PlacesRail(QWidget* parent) : QWidget(parent) {
  setFixedWidth(railWidth);
  setAccessibleName(tr("Places"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 8, 0, 8);
  column->setSpacing(0);
  auto* group = new QButtonGroup(this);
  for (const Place place : allPlaces) {
    auto* button = new RailButton(place, this);
    group->addButton(button);
    column->addWidget(button);
    connect(button, &QAbstractButton::clicked, this, [this, place] { emit wanted(place); });
    buttons_[static_cast<std::size_t>(place)] = button;
  }
  column->addStretch();
}

void PlacesRail::setPlace(Place place) { buttons_[static_cast<std::size_t>(place)]->setChecked(true); }

void PlacesRail::setReason(Place place, const QString& reason) {
  RailButton* button = buttons_[static_cast<std::size_t>(place)];
  button->setEnabled(reason.isEmpty());
  button->setAccessibleDescription(reason.isEmpty() ? placePurpose(place) : reason);
  button->setToolTip(reason.isEmpty() ? RailButton::hint(place) : reason);
}

void PlacesRail::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const QColor ground = blend(palette().color(QPalette::WindowText), palette().color(QPalette::Window), 0.06);
  painter.fillRect(rect(), ground);
  // Graduations: a long one in the middle of each place, short ones between.
  painter.setPen(palette().color(QPalette::Mid));
  const int step = buttonHeight / 4;
  for (int y = 8 + buttonHeight / 2 - 2 * step, mark = -2; y < height() - 4; y += step, ++mark) {
    const bool isLong = mark % 4 == 0;
    painter.drawLine(width() - (isLong ? scaleWidth : 6), y, width(), y);
  }
  painter.drawLine(width() - 1, 0, width() - 1, height());
}

}  // namespace steadyturn
