#include "series_grid.h"

#include <QApplication>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>

#include "text.h"

namespace steadyturn {

SeriesGrid::SeriesGrid(SetupModel& model, SetupRun run, QWidget* parent) : QWidget(parent), model_(model), run_(run) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  rebuild();
}

void SeriesGrid::rebuild() {
  if (sheet_) {
    sheet_->hide();
    sheet_->deleteLater();
  }
  cells_.clear();
  means_.clear();
  sheet_ = new QWidget(this);
  layout()->addWidget(sheet_);
  auto* grid = new QGridLayout(sheet_);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(5);
  const auto& series = model_.run(run_).series;
  const int readings = static_cast<int>(rulesFor(run_).readings);
  const auto head = [&](const QString& text, int column) {
    auto* label = new QLabel(text, sheet_);
    label->setAlignment(Qt::AlignRight);
    label->setForegroundRole(QPalette::PlaceholderText);
    grid->addWidget(label, 0, column);
  };
  for (int r = 0; r < readings; ++r) head(QString::number(r + 1), r + 1);
  head(tr("mean, %1").arg(fromText(unitSign(model_.draft().unit))), readings + 1);
  for (std::size_t s = 0; s < series.size(); ++s) {
    const int line = static_cast<int>(s) + 1;
    auto* name = new QLabel(tr("Series %1").arg(line), sheet_);
    grid->addWidget(name, line, 0);
    auto& row = cells_.emplace_back();
    for (int r = 0; r < readings; ++r) {
      row.push_back(makeCell(s, static_cast<std::size_t>(r)));
      grid->addWidget(row.back(), line, r + 1);
    }
    means_.push_back(new QLabel(sheet_));
    means_.back()->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    means_.back()->setMinimumWidth(fontMetrics().horizontalAdvance(QStringLiteral("mean, 00000.00")));
    grid->addWidget(means_.back(), line, readings + 1);
  }
  grid->setColumnStretch(readings + 2, 1);
  sheet_->show();
  showFigures();
}

QLineEdit* SeriesGrid::makeCell(std::size_t series, std::size_t reading) {
  auto* cell = new QLineEdit(model_.run(run_).series[series][static_cast<qsizetype>(reading)], sheet_);
  cell->setAccessibleName(tr("Series %1, reading %2").arg(series + 1).arg(reading + 1));
  cell->setAlignment(Qt::AlignRight);
  cell->setMaxLength(24);
  cell->setMinimumWidth(44);
  cell->setMaximumWidth(76);
  cell->installEventFilter(this);
  connect(cell, &QLineEdit::textChanged, this,
          [this, series, reading](const QString& text) { model_.setReading(run_, series, reading, text); });
  connect(cell, &QLineEdit::editingFinished, &model_, &SetupModel::keepDraft);
  return cell;
}

void SeriesGrid::showFigures() {
  const RunFigures figures = model_.figures(run_);
  for (std::size_t s = 0; s < means_.size() && s < figures.means.size(); ++s) {
    means_[s]->setText(figures.means[s] ? fromText(writeRounded(*figures.means[s], 5)) : QString());
  }
}

std::optional<SeriesGrid::Place> SeriesGrid::placeOf(const QObject* cell) const {
  for (std::size_t s = 0; s < cells_.size(); ++s) {
    for (std::size_t r = 0; r < cells_[s].size(); ++r) {
      if (cells_[s][r] == cell) return Place{s, r};
    }
  }
  return std::nullopt;
}

bool SeriesGrid::eventFilter(QObject* watched, QEvent* event) {
  const auto place = placeOf(watched);
  if (!place) return QWidget::eventFilter(watched, event);
  if (event->type() == QEvent::FocusIn) cells_[place->series][place->reading]->selectAll();
  if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
  switch (static_cast<QKeyEvent*>(event)->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
      goOn(*place);
      return true;
    case Qt::Key_Up:
      step(*place, -1);
      return true;
    case Qt::Key_Down:
      step(*place, 1);
      return true;
    default:
      return QWidget::eventFilter(watched, event);
  }
}

void SeriesGrid::goOn(Place from) {
  if (from.reading + 1 < cells_[from.series].size()) {
    cells_[from.series][from.reading + 1]->setFocus(Qt::TabFocusReason);
  } else if (from.series + 1 < cells_.size()) {
    cells_[from.series + 1].front()->setFocus(Qt::TabFocusReason);
  } else {
    emit finished();
  }
}

void SeriesGrid::step(Place from, int series) {
  const auto to = static_cast<std::ptrdiff_t>(from.series) + series;
  if (to < 0 || to >= static_cast<std::ptrdiff_t>(cells_.size())) return;
  cells_[static_cast<std::size_t>(to)][from.reading]->setFocus(Qt::TabFocusReason);
}

void SeriesGrid::focusFirstEmpty() {
  for (const auto& row : cells_) {
    for (QLineEdit* cell : row) {
      if (cell->text().trimmed().isEmpty()) return cell->setFocus(Qt::TabFocusReason);
    }
  }
  cells_.back().back()->setFocus(Qt::TabFocusReason);
}

bool SeriesGrid::put(const QString& reading) {
  const auto place = placeOf(QApplication::focusWidget());
  if (!place) return false;
  cells_[place->series][place->reading]->setText(reading);
  goOn(*place);
  return true;
}

}  // namespace steadyturn
