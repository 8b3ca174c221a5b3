#include "check_foot.h"

#include <QGridLayout>
#include <QLabel>
#include <QPushButton>

#include "badge.h"
#include "bench_words.h"
#include "budget_panel.h"
#include "problem_text.h"
#include "text.h"
#include "title.h"

namespace steadyturn {

CheckFoot::CheckFoot(BenchModel& model, QWidget* parent)
    : QWidget(parent),
      model_(model),
      verdict_(new Badge(this)),
      words_(new QLabel(this)),
      notes_(new QLabel(this)),
      budget_(new BudgetPanel(this)) {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 6, 0, 0);
  makeTitle(*verdict_, 1.7);
  verdict_->setAccessibleName(tr("Verdict of the check as it stands"));
  words_->setWordWrap(true);
  words_->setAccessibleName(tr("How sure the verdict is"));
  notes_->setWordWrap(true);
  notes_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  notes_->setAccessibleName(tr("What the check leaves open"));
  grid->addWidget(verdict_, 0, 0);
  grid->addWidget(words_, 0, 1);
  grid->addWidget(notes_, 1, 0, 1, 2);
  grid->addWidget(budget_, 2, 0, 1, 2);
  grid->addLayout(makeButtons(), 0, 2, 4, 1);
  grid->setColumnStretch(1, 1);
  grid->setRowStretch(2, 100);
  grid->setRowStretch(3, 1);
}

QVBoxLayout* CheckFoot::makeButtons() {
  auto* column = new QVBoxLayout;
  const auto button = [&](const QString& label, auto signal) {
    auto* made = new QPushButton(label, this);
    column->addWidget(made);
    connect(made, &QPushButton::clicked, this, signal);
    return made;
  };
  save_ = button(tr("Save the check"), &CheckFoot::saveWanted);
  save_->setShortcut(QKeySequence::Save);
  save_->setToolTip(tr("Ctrl+S"));
  save_->setAutoDefault(true);
  addPoint_ = button(tr("&Add a set-point"), &CheckFoot::pointWanted);
  clear_ = button(tr("C&lear the readings"), &CheckFoot::clearWanted);
  hold_ = button(tr("Hold the tool…"), [this] {
    emit changeWanted(model_.tool()->status == ToolStatus::Held ? ToolChange::Release : ToolChange::Hold);
  });
  retire_ = button(tr("Retire it…"), [this] { emit changeWanted(ToolChange::Retire); });
  setup_ = button(tr("Bench set-&up…"), &CheckFoot::setupWanted);
  setup_->setToolTip(tr("The runs that yield the spans of the uncertainty budget (ISO 6789-2)"));
  tester_ = button(tr("Torque teste&r…"), &CheckFoot::testerWanted);
  tester_->setToolTip(tr("Readings straight from a serial port"));
  column->addStretch();
  return column;
}

void CheckFoot::showTester(bool on) { tester_->setText(on ? tr("Torque teste&r: on…") : tr("Torque teste&r…")); }

void CheckFoot::showTool() {
  const bool ready = model_.tool() && model_.plan();
  const bool held = ready && model_.tool()->status == ToolStatus::Held;
  for (QPushButton* button : {addPoint_, hold_, retire_, setup_}) button->setEnabled(ready);
  hold_->setText(held ? tr("Release the tool…") : tr("Hold the tool…"));
}

void CheckFoot::showEvaluation() {
  const int typed = model_.draft().typedReadings();
  const QString save = model_.draft().corrects ? tr("Save the correction") : tr("Save the check");
  if (save_->text() != save) {
    save_->setText(save);
    save_->setShortcut(QKeySequence::Save);  // a new text takes the shortcut away
  }
  save_->setEnabled(model_.tool() && typed > 0);
  clear_->setEnabled(typed > 0);
  const QStringList notes = noteWords(model_);
  notes_->setText(notes.join(QLatin1Char('\n')));
  notes_->setVisible(!notes.isEmpty());
  budget_->show(model_.budget());
  if (const auto& result = model_.result()) {
    verdict_->setLook(lookOf(result->verdict));
    words_->setText(verdictWords(*result, model_.rule()) + QLatin1Char('\n') + riskWords(*result));
  } else if (!model_.refusals().empty()) {
    verdict_->setLook({Sign::Warning, Tone::Caution, tr("not yet")});
    words_->setText(wordProblems(model_.refusals()));
  } else {
    verdict_->clearLook();
    words_->setText(model_.tool() ? tr("No readings yet. Enter or Tab goes on to the next cell.") : QString());
  }
}

}  // namespace steadyturn
