// The readings of one run of a bench set-up: series down, readings across, each series' mean at its end.
#pragma once

#include <QWidget>
#include <vector>

#include "setup_model.h"

class QLabel;
class QLineEdit;

namespace steadyturn {

class SeriesGrid : public QWidget {
  Q_OBJECT
 public:
  SeriesGrid(SetupModel& model, SetupRun run, QWidget* parent = nullptr);
  void focusFirstEmpty();
  // A reading from a device: into the focused cell, and on. False: no cell is waiting.
  bool put(const QString& reading);
  void showFigures();
  void rebuild();

 signals:
  void finished();  // Enter in the last cell

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Place {
    std::size_t series, reading;
  };
  QLineEdit* makeCell(std::size_t series, std::size_t reading);
  std::optional<Place> placeOf(const QObject* cell) const;
  void goOn(Place from);
  void step(Place from, int series);

  SetupModel& model_;
  const SetupRun run_;
  QWidget* sheet_ = nullptr;
  std::vector<std::vector<QLineEdit*>> cells_;
  std::vector<QLabel*> means_;
};

}  // namespace steadyturn
