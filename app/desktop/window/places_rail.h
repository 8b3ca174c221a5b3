// The four places of a workshop, down the left side, along a scale like a wrench's: the pointer stands where one is.
#pragma once

#include <QAbstractButton>
#include <QWidget>
#include <array>

namespace steadyturn {

enum class Place { Bench, Cabinet, Bay, History };
inline constexpr std::array allPlaces{Place::Bench, Place::Cabinet, Place::Bay, Place::History};
QString placeName(Place place);
QString placePurpose(Place place);        // "record a check"
QKeySequence placeShortcut(Place place);  // Ctrl+1 …

class RailButton : public QAbstractButton {
  Q_OBJECT
 public:
  RailButton(Place place, QWidget* parent);
  QSize sizeHint() const override;
  static QString hint(Place place);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  Place place_;
};

class PlacesRail : public QWidget {
  Q_OBJECT
 public:
  explicit PlacesRail(QWidget* parent = nullptr);
  void setPlace(Place place);
  void setReason(Place place, const QString& reason);  // why it can't be gone to; empty: it can

 signals:
  void wanted(steadyturn::Place place);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::array<RailButton*, allPlaces.size()> buttons_{};
};

}  // namespace steadyturn
