#include "reading_cell.h"

#include <QKeyEvent>
#include <QLabel>
#include <QVBoxLayout>
#include <cmath>

#include "text.h"
#include "theme.h"
#include "tolerance.h"

namespace steadyturn {
namespace {

void colour(QLabel* label, Tone tone) {
  QPalette palette = label->parentWidget()->palette();
  palette.setColor(QPalette::WindowText, toneColour(tone, palette));
  label->setPalette(palette);
}

}  // namespace

ReadingCell::ReadingCell(const QString& accessibleName, const QString& typed, QWidget* parent)
    : QWidget(parent), line_(new QLineEdit(typed, this)), deviation_(new QLabel(this)) {
  line_->setAccessibleName(accessibleName);
  line_->setAlignment(Qt::AlignRight);
  line_->setMaxLength(24);
  line_->installEventFilter(this);
  QFont large = line_->font();
  large.setPointSizeF(large.pointSizeF() * 1.35);
  line_->setFont(large);
  deviation_->setAlignment(Qt::AlignRight);
  setFocusProxy(line_);
  setMinimumWidth(56);
  setMaximumWidth(104);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(1);
  column->addWidget(line_);
  column->addWidget(deviation_);
  connect(line_, &QLineEdit::textEdited, this, &ReadingCell::typed);
}

void ReadingCell::setDeviation(std::optional<double> deviation, double limit) {
  if (!deviation) {
    deviation_->clear();
    line_->setAccessibleDescription({});
    return;
  }
  const bool outside = !atMost(std::abs(*deviation), limit);
  deviation_->setText((outside ? QStringLiteral("✗ ") : QString()) + percentText(*deviation));
  colour(deviation_, outside ? Tone::Bad : Tone::Quiet);
  line_->setAccessibleDescription(outside ? tr("deviation %1, outside the limit").arg(percentText(*deviation))
                                          : tr("deviation %1").arg(percentText(*deviation)));
}

void ReadingCell::setWrong(bool wrong) {
  if (!wrong) return;
  deviation_->setText(tr("no number"));
  colour(deviation_, Tone::Bad);
  line_->setAccessibleDescription(tr("this is not a number"));
}

bool ReadingCell::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::FocusIn) line_->selectAll();
  if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
  switch (static_cast<QKeyEvent*>(event)->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
      emit next();
      return true;
    case Qt::Key_Up:
      emit up();
      return true;
    case Qt::Key_Down:
      emit down();
      return true;
    default:
      return QWidget::eventFilter(watched, event);
  }
}

}  // namespace steadyturn
