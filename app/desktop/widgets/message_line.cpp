#include "message_line.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>

#include "problem_text.h"
#include "sign.h"

namespace steadyturn {
namespace {

constexpr int signRoom = 38;

Sign signOf(Tone tone) {
  switch (tone) {
    case Tone::Good:
      return Sign::Tick;
    case Tone::Caution:
      return Sign::Warning;
    case Tone::Bad:
      return Sign::Cross;
    case Tone::Info:
    case Tone::Quiet:
      return Sign::Info;
  }
  return Sign::Info;
}

}  // namespace

MessageLine::MessageLine(QWidget* parent)
    : QFrame(parent),
      label_(new QLabel(this)),
      actions_(new QHBoxLayout),
      dismiss_(new QPushButton(tr("Dismiss"), this)) {
  setObjectName(QStringLiteral("messageLine"));
  setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
  label_->setWordWrap(true);
  label_->setTextFormat(Qt::PlainText);
  label_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  dismiss_->setAccessibleName(tr("Dismiss the message"));
  dismiss_->setFlat(true);
  connect(dismiss_, &QPushButton::clicked, this, &MessageLine::clear);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(signRoom, 6, 8, 6);
  row->addWidget(label_, 1);
  row->addLayout(actions_);
  row->addWidget(dismiss_, 0, Qt::AlignVCenter);
  hide();
}

void MessageLine::say(Tone tone, const QString& text, const std::vector<Action>& actions) {
  clear();
  tone_ = tone;
  label_->setText(text);
  setAccessibleName(text);
  for (const Action& action : actions) {
    auto* button = new QPushButton(action.label, this);
    // The action may say something else, which takes this button away: it is run once the click is over.
    connect(button, &QPushButton::clicked, this, action.act, Qt::QueuedConnection);
    actions_->addWidget(button);
  }
  show();
  update();
  QAccessibleEvent alert(this, QAccessible::Alert);
  QAccessible::updateAccessibility(&alert);
}

void MessageLine::sayProblems(const Problems& problems) { say(Tone::Bad, wordProblems(problems)); }

void MessageLine::clear() {
  while (QLayoutItem* item = actions_->takeAt(0)) {
    item->widget()->hide();
    item->widget()->deleteLater();
    delete item;
  }
  label_->clear();
  hide();
}

void MessageLine::setLasting() { dismiss_->hide(); }

QString MessageLine::text() const { return label_->text(); }

void MessageLine::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const QColor colour = toneColour(tone_, palette());
  painter.fillRect(rect(), blend(colour, palette().color(QPalette::Window), 0.10));
  painter.fillRect(QRect(0, 0, 4, height()), colour);
  paintSign(painter, QRectF(12, (height() - 18) / 2.0, 18, 18), signOf(tone_), colour);
}

}  // namespace steadyturn
