#include "limit_line.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "act_guard.h"
#include "message_line.h"
#include "problem_text.h"
#include "text.h"

namespace steadyturn {

LimitLine::LimitLine(QWidget* parent)
    : QWidget(parent),
      kind_(new QComboBox(this)),
      unit_(new QComboBox(this)),
      trial_(new QLineEdit(this)),
      take_(new QPushButton(tr("Ta&ke it over"), this)),
      words_(new MessageLine(this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  auto* row = new QHBoxLayout;
  auto* label = new QLabel(tr("Limit by tri&al on parts of the same kind: torque that"), this);
  label->setBuddy(kind_);
  kind_->setAccessibleName(tr("What the trial found"));
  kind_->addItem(tr("stripped the thread"), static_cast<int>(TrialKind::Stripping));
  kind_->addItem(tr("drove the screw in"), static_cast<int>(TrialKind::Driving));
  trial_->setAccessibleName(tr("Torque of the trial"));
  trial_->setAlignment(Qt::AlignRight);
  unit_->setAccessibleName(tr("Unit of the trial's torque"));
  for (const Unit unit : allUnits) unit_->addItem(fromText(unitSign(unit)), static_cast<int>(unit));
  row->addWidget(label);
  row->addWidget(kind_);
  row->addWidget(trial_, 1);
  row->addWidget(unit_);
  row->addWidget(take_);
  column->addLayout(row);
  column->addWidget(words_);
  words_->setLasting();
  needs(*take_, Act::EnterFastener);
  connect(kind_, &QComboBox::currentIndexChanged, this, &LimitLine::propose);
  connect(unit_, &QComboBox::currentIndexChanged, this, &LimitLine::propose);
  connect(trial_, &QLineEdit::textChanged, this, &LimitLine::propose);
  connect(take_, &QPushButton::clicked, this, [this] {
    if (const auto proposed = proposal()) emit takenOver(*proposed);
  });
}

LimitLine::Typed LimitLine::typed() const {
  return {.trial = trial_->text(),
          .kind = static_cast<TrialKind>(kind_->currentData().toInt()),
          .unit = static_cast<Unit>(unit_->currentData().toInt())};
}

void LimitLine::show(const Typed& typed) {
  trial_->setText(typed.trial);
  kind_->setCurrentIndex(kind_->findData(static_cast<int>(typed.kind)));
  unit_->setCurrentIndex(unit_->findData(static_cast<int>(typed.unit)));
}

void LimitLine::display(const std::optional<Fastener>& fastener) {
  fastener_ = fastener;
  const bool itsOwn = fastener && fastener->partLimit && fastener->limitBasis.empty();
  setVisible(fastener && fastener->plastic() && !itsOwn);
  // A trial is told in the unit of the specification until somebody says otherwise.
  if (fastener && trial_->text().isEmpty()) unit_->setCurrentIndex(unit_->findData(static_cast<int>(fastener->unit)));
  propose();
}

void LimitLine::takeFocus() { trial_->setFocus(Qt::TabFocusReason); }

// Enter takes the proposal over; it does not save the form around it.
void LimitLine::keyPressEvent(QKeyEvent* event) {
  if (event->key() != Qt::Key_Return && event->key() != Qt::Key_Enter) return QWidget::keyPressEvent(event);
  take_->click();
}

Result<LimitProposal> LimitLine::proposal() const {
  const Typed trial = typed();
  const auto read = parseTorqueNumber(asNumberText(trial.trial), "trial");
  if (!read) return tl::unexpected(read.error());
  return proposeLimit(*fastener_, trial.kind, {.value = *read, .unit = trial.unit});
}

void LimitLine::propose() {
  take_->setEnabled(false);
  if (!fastener_) return words_->clear();
  const bool noTrial = trial_->text().trimmed().isEmpty();
  if (noTrial && fastener_->partLimit && !fastener_->limitBasis.empty()) {
    return words_->say(
        Tone::Caution,
        tr("Limit %1 – %2.\nThe maker's data come first: look for the part's own limit.")
            .arg(torqueText({*fastener_->partLimit, fastener_->unit}), fromText(fastener_->limitBasis)));
  }
  if (noTrial) {
    return words_->say(Tone::Info,
                       tr("The maker's data come first: look for the part's own limit. Where there is none, "
                          "a trial proposes %1.")
                           .arg(fromText(limitPractice)));
  }
  const auto proposed = proposal();
  if (!proposed) return words_->sayProblems(proposed.error());
  take_->setEnabled(true);
  words_->say(Tone::Caution,
              tr("Limit %1 – %2.\n%3")
                  .arg(torqueText(proposed->limit), fromText(proposed->basis), fromText(limitIsAProposal)));
}

}  // namespace steadyturn
