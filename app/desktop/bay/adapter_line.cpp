#include "adapter_line.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>

#include "adapter_sketch.h"
#include "text.h"

namespace steadyturn {
namespace {

std::optional<double> numberIn(const QLineEdit* field) {
  const Result<double> number = parseNumber(asNumberText(field->text()), "number");
  return number ? std::optional(*number) : std::nullopt;
}

}  // namespace

AdapterLine::AdapterLine(QWidget* parent)
    : QWidget(parent), words_(new QLabel(this)), sketch_(new AdapterSketch(this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  auto* row = new QHBoxLayout;
  column->addLayout(row);
  column->addWidget(sketch_);
  sketch_->hide();
  row->setContentsMargins(0, 0, 0, 0);
  const auto field = [&](const QString& label, const QString& tip) {
    auto* made = new QLineEdit(this);
    made->setFixedWidth(64);
    made->setAlignment(Qt::AlignRight);
    made->setAccessibleName(QString(label).remove(QLatin1Char('&')));
    made->setToolTip(tip);
    auto* name = new QLabel(label, this);
    name->setBuddy(made);
    row->addWidget(name);
    row->addWidget(made);
    connect(made, &QLineEdit::textEdited, this, &AdapterLine::read);
    made->installEventFilter(this);
    return made;
  };
  length_ = field(tr("Adapter: &wrench length, mm"), tr("from the middle of the hand to the centre of the drive"));
  offset_ = field(tr("&offset, mm"), tr("from the centre of the drive to the centre of the fastener"));
  angle_ = field(tr("ang&le, °"), tr("between the adapter and the handle's axis: 0 straight on, 90 across"));
  row->addWidget(words_, 1);
  words_->setText(tr("without an adapter"));
}

bool AdapterLine::eventFilter(QObject* watched, QEvent* event) {
  const bool left = event->type() == QEvent::FocusOut;
  if (left || event->type() == QEvent::FocusIn)
    QMetaObject::invokeMethod(this, &AdapterLine::showSketch, Qt::QueuedConnection);
  return QWidget::eventFilter(watched, event);
}

// While somebody measures.
void AdapterLine::showSketch() {
  const bool wanted = length_->hasFocus() || offset_->hasFocus() || angle_->hasFocus();
  if (wanted == sketch_->isVisible()) return;
  emit measuring(wanted);
  sketch_->setVisible(wanted);
}

void AdapterLine::read() {
  const bool empty = length_->text().trimmed().isEmpty() && offset_->text().trimmed().isEmpty() &&
                     angle_->text().trimmed().isEmpty();
  if (empty) {
    words_->setText(tr("without an adapter"));
    emit changed(std::nullopt);
    return;
  }
  const std::optional<double> length = numberIn(length_);
  const std::optional<double> offset = numberIn(offset_);
  const std::optional<double> angle = angle_->text().trimmed().isEmpty() ? 0.0 : numberIn(angle_);
  if (!length || *length <= 0 || !offset || *offset < 0 || !angle) {
    words_->setText(tr("needs a length above 0 and an offset of 0 or more"));
    return;
  }
  const Adapter adapter{*length, *offset, *angle};
  const double factor = adapterFactor(adapter);
  if (factor <= 0) {
    words_->setText(tr("reaches back past the hand: no torque in this sense"));
    return;
  }
  sketch_->display(adapter);
  words_->setText(tr("the fastener gets × %1 of what the wrench shows").arg(fromText(writeRounded(factor, 4))));
  emit changed(adapter);
}

}  // namespace steadyturn
