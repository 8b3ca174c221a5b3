#include "bench_place.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QSettings>
#include <QShortcut>

#include "badge.h"
#include "bench_form.h"
#include "bench_words.h"
#include "message_line.h"
#include "picker.h"
#include "problem_text.h"
#include "readings_grid.h"
#include "text.h"

namespace steadyturn {

BenchPlace::BenchPlace(OpenShop& shop, QWidget* parent)
    : QWidget(parent),
      model_(shop),
      message_(new MessageLine(this)),
      form_(new BenchForm(model_, this)),
      plan_(new QLabel(this)),
      grid_(new ReadingsGrid(model_, this)) {
  auto* column = new QVBoxLayout(this);
  column->addWidget(form_);
  column->addWidget(message_);
  plan_->setWordWrap(true);
  column->addWidget(plan_);
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setFocusPolicy(Qt::NoFocus);
  auto* sheet = new QWidget(scroll);
  auto* inner = new QVBoxLayout(sheet);
  inner->setContentsMargins(0, 8, 0, 0);
  inner->addWidget(grid_);
  scroll->setWidget(sheet);
  // As tall as its set-points, and scrolling only when the window is lower than that: the verdict stands right
  // beneath.
  const auto fit = [scroll, sheet] {
    sheet->layout()->activate();
    scroll->setMaximumHeight(sheet->sizeHint().height() + 2);
  };
  column->addWidget(scroll, 100);
  column->addWidget(makeFoot());
  column->addStretch(1);
  connect(&model_, &BenchModel::pointsRebuilt, this, fit);
  connect(&model_, &BenchModel::pointsRebuilt, this, [this] {
    if (QWidget* last = grid_->lastCell()) QWidget::setTabOrder(last, save_);
  });
  fit();

  connect(form_, &BenchForm::toolWanted, this, &BenchPlace::pickUp);
  connect(form_, &BenchForm::entered, this, &BenchPlace::goToWork);
  connect(form_, &BenchForm::notFound, this, [this](const QString& what, const QString& typed) {
    message_->say(Tone::Caution,
                  tr("No single %1 here fits “%2”. Type more of it, or pick one from the list.").arg(what, typed));
  });
  connect(grid_, &ReadingsGrid::finished, this, [this] { save_->setFocus(Qt::TabFocusReason); });
  connect(&model_, &BenchModel::toolPicked, this, &BenchPlace::showPlan);
  connect(&model_, &BenchModel::evaluated, this, &BenchPlace::showEvaluation);
  recallHeading();
  showPlan();
  showEvaluation();
}

QWidget* BenchPlace::makeFoot() {
  auto* foot = new QWidget(this);
  auto* grid = new QGridLayout(foot);
  grid->setContentsMargins(0, 6, 0, 0);
  verdict_ = new Badge(foot);
  QFont large = verdict_->font();
  large.setPointSizeF(large.pointSizeF() * 1.7);
  large.setBold(true);
  verdict_->setFont(large);
  verdict_->setAccessibleName(tr("Verdict of the check as it stands"));
  words_ = new QLabel(foot);
  words_->setWordWrap(true);
  notes_ = new QLabel(foot);
  notes_->setWordWrap(true);
  notes_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  notes_->setAccessibleName(tr("What the check leaves open"));
  save_ = new QPushButton(tr("Save the check"), foot);
  save_->setShortcut(QKeySequence::Save);
  save_->setToolTip(tr("Ctrl+S"));
  save_->setAutoDefault(true);
  clear_ = new QPushButton(tr("C&lear the readings"), foot);
  addPoint_ = new QPushButton(tr("&Add a set-point"), foot);
  grid->addWidget(verdict_, 0, 0);
  grid->addWidget(words_, 0, 1);
  grid->addWidget(notes_, 1, 0, 1, 2);
  auto* buttons = new QVBoxLayout;
  buttons->addWidget(save_);
  buttons->addWidget(addPoint_);
  buttons->addWidget(clear_);
  buttons->addStretch();
  grid->addLayout(buttons, 0, 2, 2, 1);
  grid->setColumnStretch(1, 1);
  grid->setRowStretch(1, 1);
  foot->setMinimumHeight(150);
  connect(save_, &QPushButton::clicked, this, &BenchPlace::save);
  connect(clear_, &QPushButton::clicked, this, &BenchPlace::clear);
  connect(addPoint_, &QPushButton::clicked, this, [this] {
    model_.addSetPoint();
    grid_->focusCell(static_cast<int>(model_.draft().points.size()) - 1, -1);
  });
  return foot;
}

void BenchPlace::take(const QString& tool) {
  pickUp(tool);
  goToWork();
}

void BenchPlace::pickUp(const QString& tool) {
  message_->clear();
  const Result<void> picked = model_.pickTool(toText(tool));
  if (!picked) return message_->sayProblems(picked.error());
  const int typed = model_.draft().typedReadings();
  if (typed > 0)
    message_->say(Tone::Info, tr("Going on with the %1 readings typed earlier for %2.").arg(typed).arg(tool));
}

void BenchPlace::arrive() { goToWork(); }

void BenchPlace::goToWork() {
  if (!model_.tool()) return form_->tool()->setFocus(Qt::TabFocusReason);
  if (model_.draft().reference.isEmpty()) return form_->reference()->setFocus(Qt::TabFocusReason);
  grid_->focusFirstEmpty();
}

void BenchPlace::showPlan() {
  const bool ready = model_.tool() && model_.plan();
  plan_->setText(ready
                     ? planWords(*model_.tool(), *model_.plan())
                     : tr("Pick the tool that is on the bench; its set-points and readings are then proposed here."));
  addPoint_->setEnabled(ready);
}

void BenchPlace::showEvaluation() {
  const int typed = model_.draft().typedReadings();
  save_->setEnabled(model_.tool() && typed > 0);
  clear_->setEnabled(typed > 0);
  notes_->setText(noteWords(model_).join(QLatin1Char('\n')));
  if (const auto& result = model_.result()) {
    verdict_->setLook(lookOf(result->verdict));
    words_->setText(verdictWords(*result, model_.rule()));
  } else if (!model_.refusals().empty()) {
    verdict_->setLook({Sign::Warning, Tone::Caution, tr("not yet")});
    words_->setText(wordProblems(model_.refusals()));
  } else {
    verdict_->clearLook();
    words_->setText(model_.tool() ? tr("No readings yet. Enter or Tab goes on to the next cell.") : QString());
  }
}

void BenchPlace::clear() {
  const std::vector<BenchPoint> before = model_.clearReadings();
  message_->say(Tone::Info, tr("The readings are cleared."), {{tr("Put them &back"), [this, before] {
                                                                 model_.putBack(before);
                                                                 message_->clear();
                                                               }}});
  goToWork();
}

void BenchPlace::save() {
  const auto bad = model_.firstBadCell();
  const Result<SavedCheck> saved = model_.save();
  if (!saved) {
    message_->sayProblems(saved.error());
    if (bad) grid_->focusCell(bad->point, bad->reading);
    return;
  }
  rememberHeading();
  sayWhatNow(*saved);
}

void BenchPlace::sayWhatNow(const SavedCheck& saved) {
  const Check check = saved.check;
  const QString tool = fromText(check.tool);
  const MessageLine::Action history{tr("Open its Histor&y"), [this, tool] { emit historyWanted(tool); }};
  const bool failed = check.verdict == Verdict::Fail || check.verdict == Verdict::ConditionalFail;
  if (!failed) {
    message_->say(Tone::Good, savedWords(saved), {history});
    form_->tool()->setFocus(Qt::TabFocusReason);
    return;
  }
  const MessageLine::Action hold{tr("Put it on h&old"), [this, check] { putOnHold(check); }};
  if (check.phase == Phase::AsFound) {
    message_->say(
        Tone::Bad,
        savedWords(saved) + tr(" Adjust it and record how it is left, or put it on hold. Jobs done with it since its "
                               "last good check are in doubt."),
        {{tr("Adjusted: record as &left"),
          [this] {
            model_.beginAsLeft();
            message_->say(Tone::Info, tr("Now the readings as left, after the adjustment."));
            goToWork();
          }},
         hold,
         history});
  } else {
    message_->say(Tone::Bad,
                  savedWords(saved) + tr(" It can't be used as it is: adjust it again, or put it on hold."),
                  {hold, history});
  }
}

void BenchPlace::putOnHold(const Check& failed) {
  const QString reason =
      tr("failed %1 on %2, check %3").arg(phaseText(failed.phase), dateText(failed.date)).arg(failed.id);
  const Result<void> held = model_.hold(failed.tool, toText(reason));
  if (!held) return message_->sayProblems(held.error());
  message_->say(Tone::Good,
                tr("%1 is on hold (%2). The Bay no longer offers it.").arg(fromText(failed.tool), reason));
  form_->tool()->setFocus(Qt::TabFocusReason);
}

void BenchPlace::recallHeading() {
  const QSettings settings;
  BenchDraft heading = model_.draft();
  heading.by = settings.value(QStringLiteral("bench/by")).toString();
  heading.reference = settings.value(QStringLiteral("bench/reference")).toString();
  form_->by()->setText(heading.by);
  form_->reference()->pick(heading.reference);
  heading.reference = form_->reference()->pickedId();  // empty when another shop is open that does not have it
  model_.setHeading(heading);
}

void BenchPlace::rememberHeading() const {
  QSettings settings;
  settings.setValue(QStringLiteral("bench/by"), model_.draft().by);
  settings.setValue(QStringLiteral("bench/reference"), model_.draft().reference);
}

}  // namespace steadyturn
