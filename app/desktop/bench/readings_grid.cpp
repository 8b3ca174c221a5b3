#include "readings_grid.h"

#include <QEvent>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <algorithm>

#include "badge.h"
#include "bench_model.h"
#include "dots_strip.h"
#include "reading_cell.h"
#include "text.h"
#include "theme.h"

namespace steadyturn {

ReadingsGrid::ReadingsGrid(BenchModel& model, QWidget* parent) : QWidget(parent), model_(model) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  connect(&model, &BenchModel::pointsRebuilt, this, &ReadingsGrid::rebuild);
  connect(&model, &BenchModel::evaluated, this, &ReadingsGrid::showFigures);
  rebuild();
}

void ReadingsGrid::rebuild() {
  if (sheet_) {
    sheet_->hide();
    sheet_->deleteLater();
  }
  rows_.clear();
  sheet_ = new QWidget(this);
  layout()->addWidget(sheet_);
  auto* grid = new QGridLayout(sheet_);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(8);
  grid->setVerticalSpacing(12);
  const auto& points = model_.draft().points;
  std::size_t readings = 0;
  for (const BenchPoint& point : points) readings = std::max(readings, point.readings.size());
  if (!points.empty()) makeHeader(grid, readings);
  for (std::size_t p = 0; p < points.size(); ++p) rows_.push_back(makeRow(grid, p, readings));
  orderTabs();
  showFigures();
  sheet_->show();
}

// Tab runs through the readings alone and on to Save; the set-points, seldom changed, come before them.
void ReadingsGrid::orderTabs() {
  QWidget* before = nullptr;
  const auto follow = [&before](QWidget* next) {
    if (before) QWidget::setTabOrder(before, next);
    before = next;
  };
  for (const Row& row : rows_) follow(row.target);
  for (const Row& row : rows_) {
    for (ReadingCell* cell : row.cells) follow(cell->line());
  }
}

void ReadingsGrid::makeHeader(QGridLayout* grid, std::size_t readings) {
  const auto head = [&](const QString& text, std::size_t column, Qt::Alignment align) {
    auto* label = new QLabel(text, sheet_);
    label->setAlignment(align | Qt::AlignBottom);
    label->setForegroundRole(QPalette::PlaceholderText);
    grid->addWidget(label, 0, static_cast<int>(column));
  };
  head(tr("Set-point, %1").arg(fromText(unitSign(model_.draft().unit))), 0, Qt::AlignRight);
  for (std::size_t r = 0; r < readings; ++r) head(QString::number(r + 1), r + 1, Qt::AlignRight);
  const double limit = model_.plan() ? model_.plan()->limitPercent : 0;
  head(tr("Mean, and U (k = 2)"), readings + 1, Qt::AlignRight);
  head(tr("against %1").arg(plusMinusText(limit)), readings + 2, Qt::AlignHCenter);
  head(tr("Verdict"), readings + 3, Qt::AlignLeft);
  grid->setColumnStretch(static_cast<int>(readings) + 2, 1);
}

ReadingsGrid::Row ReadingsGrid::makeRow(QGridLayout* grid, std::size_t point, std::size_t readings) {
  const BenchPoint& typed = model_.draft().points[point];
  const int line = static_cast<int>(point) * 2 + 1;
  Row row{};
  row.target = new QLineEdit(typed.target, sheet_);
  row.target->setAccessibleName(tr("Set-point %1").arg(point + 1));
  row.target->setAlignment(Qt::AlignRight);
  QFont large = row.target->font();
  large.setPointSizeF(large.pointSizeF() * 1.35);
  row.target->setFont(large);
  row.target->setFixedWidth(92);
  grid->addWidget(row.target, line, 0, Qt::AlignTop | Qt::AlignRight);
  connect(row.target, &QLineEdit::textEdited, this,
          [this, point](const QString& text) { model_.setTarget(point, text); });
  connect(row.target, &QLineEdit::returnPressed, this, [this, point] { focusCell(static_cast<int>(point), 0); });
  for (std::size_t r = 0; r < typed.readings.size(); ++r) {
    auto* cell =
        new ReadingCell(tr("Set-point %1, reading %2").arg(typed.target).arg(r + 1), typed.readings[r], sheet_);
    connect(cell, &ReadingCell::typed, this,
            [this, point, r](const QString& text) { model_.setReading(point, r, text); });
    connect(cell, &ReadingCell::finished, this, [this] {
      model_.keepDraft();
      showFigures();
    });
    connect(cell, &ReadingCell::next, this, [this, point, r] { goOn(point, r); });
    connect(cell, &ReadingCell::up, this,
            [this, point, r] { focusCell(static_cast<int>(point) - 1, static_cast<int>(r)); });
    connect(cell, &ReadingCell::down, this,
            [this, point, r] { focusCell(static_cast<int>(point) + 1, static_cast<int>(r)); });
    grid->addWidget(cell, line, static_cast<int>(r) + 1, Qt::AlignTop);
    row.cells.push_back(cell);
  }
  row.mean = new QLabel(sheet_);
  row.mean->setAlignment(Qt::AlignRight | Qt::AlignTop);
  row.mean->setMinimumWidth(row.mean->fontMetrics().horizontalAdvance(QStringLiteral("U  00.00 %")) + 24);
  row.strip = new DotsStrip(sheet_);
  row.verdict = new Badge(sheet_);
  row.verdict->setMinimumWidth(row.verdict->fontMetrics().horizontalAdvance(QStringLiteral("conditional pass")) + 26);
  grid->addWidget(row.mean, line, static_cast<int>(readings) + 1);
  grid->addWidget(row.strip, line, static_cast<int>(readings) + 2, Qt::AlignTop);
  grid->addWidget(row.verdict, line, static_cast<int>(readings) + 3, Qt::AlignTop);
  row.question = new QLabel(sheet_);
  row.question->setWordWrap(true);
  row.question->hide();
  return row;
}

void ReadingsGrid::showFigures() {
  const auto& figures = model_.figures();
  const double limit = model_.plan() ? model_.plan()->limitPercent : 0;
  for (std::size_t p = 0; p < rows_.size() && p < figures.size(); ++p) {
    Row& row = rows_[p];
    const BenchPoint& typed = model_.draft().points[p];
    for (std::size_t r = 0; r < row.cells.size(); ++r) {
      const auto& question = figures[p].questions[r];
      row.cells[r]->setFigures({.deviation = figures[p].deviations[r],
                                .limit = limit,
                                .wrong = problemWith(typed.readings[r], "reading").has_value(),
                                .question = question ? fromText(question->text) : QString()});
    }
    showQuestions(p);
    if (const auto& result = figures[p].result) {
      row.mean->setText(percentText(result->meanDeviationPercent) + QStringLiteral("\nU  ") +
                        QString::number(result->expandedUncertaintyPercent, 'f', 2) + QStringLiteral(" %"));
      row.strip->setFigures(result->deviationsPercent, limit, result->meanDeviationPercent);
      row.verdict->setLook(lookOf(result->verdict));
    } else {
      row.mean->clear();
      row.strip->setFigures({}, limit, std::nullopt);
      row.verdict->clearLook();
    }
  }
}

// The words stand under the first cell they are about and take the room to its right.
void ReadingsGrid::showQuestions(std::size_t point) {
  Row& row = rows_[point];
  const auto& questions = model_.figures()[point].questions;
  QStringList words;
  int first = 0;
  for (std::size_t r = 0; r < row.cells.size(); ++r) {
    if (!questions[r] || row.cells[r]->editing()) continue;
    if (words.isEmpty()) first = static_cast<int>(r);
    words << tr("Reading %1: %2.").arg(QString::number(r + 1), fromText(questions[r]->text));
  }
  row.question->setHidden(words.isEmpty());
  if (words.isEmpty()) return;
  for (QString& line : words) line.replace(QStringLiteral("?."), QStringLiteral("?"));
  row.question->setText(words.join(QLatin1Char('\n')));
  QPalette palette = sheet_->palette();
  palette.setColor(QPalette::WindowText, toneColour(Tone::Caution, palette));
  row.question->setPalette(palette);
  auto* grid = qobject_cast<QGridLayout*>(sheet_->layout());
  grid->removeWidget(row.question);
  grid->addWidget(row.question, static_cast<int>(point) * 2 + 2, first + 1, 1, grid->columnCount() - first - 1);
}

void ReadingsGrid::changeEvent(QEvent* event) {
  // The tones are the palette's own.
  if (event->type() == QEvent::PaletteChange) showFigures();
  QWidget::changeEvent(event);
}

void ReadingsGrid::goOn(std::size_t point, std::size_t reading) {
  if (reading + 1 < rows_[point].cells.size()) {
    rows_[point].cells[reading + 1]->line()->setFocus(Qt::TabFocusReason);
  } else if (point + 1 < rows_.size()) {
    rows_[point + 1].cells.front()->line()->setFocus(Qt::TabFocusReason);
  } else {
    emit finished();
  }
}

void ReadingsGrid::focusCell(int point, int reading) {
  if (point < 0 || point >= static_cast<int>(rows_.size())) return;
  Row& row = rows_[static_cast<std::size_t>(point)];
  if (reading < 0) return row.target->setFocus(Qt::TabFocusReason);
  if (reading < static_cast<int>(row.cells.size())) {
    row.cells[static_cast<std::size_t>(reading)]->line()->setFocus(Qt::TabFocusReason);
  }
}

void ReadingsGrid::focusFirstEmpty() {
  for (Row& row : rows_) {
    for (ReadingCell* cell : row.cells) {
      if (cell->line()->text().trimmed().isEmpty()) return cell->line()->setFocus(Qt::TabFocusReason);
    }
  }
}

ReadingCell* ReadingsGrid::waitingCell() const {
  const QWidget* focused = window()->focusWidget();
  ReadingCell* empty = nullptr;
  for (const Row& row : rows_) {
    for (ReadingCell* cell : row.cells) {
      if (cell->line() == focused) return cell;
      if (!empty && cell->line()->text().trimmed().isEmpty()) empty = cell;
    }
  }
  return empty;
}

bool ReadingsGrid::put(const QString& reading) {
  ReadingCell* cell = waitingCell();
  if (cell) cell->put(reading);
  return cell;
}

QWidget* ReadingsGrid::lastCell() const { return rows_.empty() ? nullptr : rows_.back().cells.back()->line(); }

}  // namespace steadyturn
