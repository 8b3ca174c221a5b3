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
  connect(line_, &QLineEdit::textEdited, this, [this](const QString& text) {
    editing_ = true;
    emit ReadingCell::typed(text);
  });
}

void ReadingCell::setFigures(const Figures& figures) {
  if (figures.wrong) {
    deviation_->setText(tr("no number"));
    colour(deviation_, Tone::Bad);
    return line_->setAccessibleDescription(tr("this is not a number"));
  }
  if (!figures.deviation) {
    deviation_->clear();
    return line_->setAccessibleDescription({});
  }
  const bool asked = !figures.question.isEmpty() && !editing_;
  const bool outside = !atMost(std::abs(*figures.deviation), figures.limit);
  const double size = std::abs(*figures.deviation);
  const QString deviation = percentText(*figures.deviation, size < 10 ? 2 : size < 100 ? 1 : 0);
  deviation_->setText((asked ? QStringLiteral("? ") : outside ? QStringLiteral("✗ ") : QString()) + deviation);
  colour(deviation_, asked ? Tone::Caution : outside ? Tone::Bad : Tone::Quiet);
  QString said = outside ? tr("deviation %1, outside the limit") : tr("deviation %1");
  said = said.arg(deviation);
  if (asked) said += QStringLiteral(". ") + figures.question;
  line_->setAccessibleDescription(said);
}

void ReadingCell::put(const QString& text) {
  line_->setText(text);
  editing_ = true;
  emit typed(text);
  finish();
  emit next();
}

void ReadingCell::finish() {
  if (!editing_) return;
  editing_ = false;
  emit finished();
}

bool ReadingCell::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::FocusIn) line_->selectAll();
  if (event->type() == QEvent::FocusOut) finish();
  if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
  switch (static_cast<QKeyEvent*>(event)->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
      finish();
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
