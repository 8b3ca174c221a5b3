#include "bench_place.h"

#include <QEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QSettings>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "bench_form.h"
#include "bench_words.h"
#include "check_foot.h"
#include "correction_line.h"
#include "message_line.h"
#include "picker.h"
#include "problem_text.h"
#include "readings_grid.h"
#include "setup_page.h"
#include "tester_page.h"
#include "text.h"

namespace steadyturn {
namespace {

// As tall as what it holds, and scrolling only when the window is lower than that: the verdict stands right beneath.
class FittingScroll : public QScrollArea {
 public:
  using QScrollArea::QScrollArea;

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override {
    if (watched == widget() && event->type() == QEvent::LayoutRequest) {
      widget()->layout()->activate();
      setMaximumHeight(widget()->sizeHint().height() + 2);
    }
    return QScrollArea::eventFilter(watched, event);
  }
};

bool drifts(DriftState state) { return state == DriftState::Drifting || state == DriftState::Leaving; }

}  // namespace

BenchPlace::BenchPlace(OpenShop& shop, QWidget* parent)
    : QWidget(parent), keeper_(shop), model_(shop, keeper_), setup_(shop, keeper_), pages_(new QStackedWidget(this)) {
  check_ = makeCheck();
  pages_->addWidget(check_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(pages_);
  connectParts();
  connectPages();
  recallHeading();
  showPlan();
}

// The cell with the focus is left while there still is a model to keep its reading.
BenchPlace::~BenchPlace() { hide(); }

QWidget* BenchPlace::makeCheck() {
  auto* sheet = new QWidget(pages_);
  message_ = new MessageLine(sheet);
  doubts_ = new MessageLine(sheet);
  reason_ = new ReasonLine(sheet);
  correction_ = new CorrectionLine(model_, sheet);
  form_ = new BenchForm(model_, sheet);
  plan_ = new QLabel(sheet);
  grid_ = new ReadingsGrid(model_, sheet);
  foot_ = new CheckFoot(model_, sheet);
  auto* column = new QVBoxLayout(sheet);
  message_->setObjectName(QStringLiteral("message"));
  doubts_->setLasting();
  doubts_->setObjectName(QStringLiteral("doubts"));
  reason_->hide();
  plan_->setWordWrap(true);
  for (QWidget* part : std::initializer_list<QWidget*>{form_, message_, reason_, correction_, doubts_, plan_})
    column->addWidget(part);
  column->addWidget(makeReadings(sheet), 100);
  column->addWidget(foot_, 60);
  column->addStretch(1);
  return sheet;
}

QWidget* BenchPlace::makeReadings(QWidget* parent) {
  auto* scroll = new FittingScroll(parent);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setFocusPolicy(Qt::NoFocus);
  auto* sheet = new QWidget(scroll);
  auto* inner = new QVBoxLayout(sheet);
  inner->setContentsMargins(0, 8, 0, 0);
  inner->addWidget(grid_);
  scroll->setWidget(sheet);
  return scroll;
}

void BenchPlace::connectParts() {
  connect(form_, &BenchForm::toolWanted, this, &BenchPlace::pickUp);
  connect(form_, &BenchForm::entered, this, &BenchPlace::goToWork);
  connect(form_, &BenchForm::notFound, this, [this](const QString& what, const QString& typed) {
    message_->say(Tone::Caution,
                  tr("No single %1 here fits “%2”. Type more of it, or pick one from the list.").arg(what, typed));
  });
  connect(grid_, &ReadingsGrid::finished, this, [this] { foot_->save()->setFocus(Qt::TabFocusReason); });
  connect(&model_, &BenchModel::pointsRebuilt, this, [this] {
    if (QWidget* last = grid_->lastCell()) QWidget::setTabOrder(last, foot_->save());
  });
  connect(&model_, &BenchModel::toolPicked, this, &BenchPlace::showPlan);
  connect(&model_, &BenchModel::choicesChanged, this, &BenchPlace::showPlan);
  connect(&model_, &BenchModel::evaluated, this, &BenchPlace::showEvaluation);
  connect(&keeper_, &DraftKeeper::failed, this, [this](const Problems& problems) {
    tell(Tone::Caution, tr("What is typed is not kept on disk; save it before closing.\n") + wordProblems(problems));
  });
  connect(foot_, &CheckFoot::saveWanted, this, &BenchPlace::save);
  connect(foot_, &CheckFoot::clearWanted, this, &BenchPlace::clear);
  connect(foot_, &CheckFoot::pointWanted, this, [this] {
    model_.addSetPoint();
    grid_->focusCell(static_cast<int>(model_.draft().points.size()) - 1, -1);
  });
  connect(foot_, &CheckFoot::changeWanted, this,
          [this](ToolChange change) { askFor(change, fromText(model_.tool()->id), {}); });
  connect(reason_, &ReasonLine::given, this, &BenchPlace::changeTool);
  connect(reason_, &ReasonLine::cancelled, this, [this] {
    reason_->hide();
    goToWork();
  });
  connect(correction_, &CorrectionLine::given, this, [this] { grid_->focusCell(0, 0); });
  connect(correction_, &CorrectionLine::givenUp, this, [this] {
    const auto check = model_.draft().corrects->check;
    model_.giveUpCorrection();
    message_->say(Tone::Info, tr("Check %1 stays as it is.").arg(check));
    goToWork();
  });
}

void BenchPlace::connectPages() {
  connect(foot_, &CheckFoot::setupWanted, this, &BenchPlace::openSetup);
  connect(foot_, &CheckFoot::testerWanted, this, [this] {
    pages_->setCurrentWidget(&testerPage());
    testerPage_->arrive();
  });
  connect(&tester_, &TesterPort::reading, this, &BenchPlace::takeReading);
  connect(&tester_, &TesterPort::told, this, &BenchPlace::tell);
  connect(&tester_, &TesterPort::stateChanged, this, [this] { foot_->showTester(tester_.isOpen()); });
}

// The pages that few checks need are made when they are first wanted: a shop opens without waiting for them.
SetupPage& BenchPlace::setupPage() {
  if (setupPage_) return *setupPage_;
  setupPage_ = new SetupPage(setup_, pages_);
  pages_->addWidget(setupPage_);
  connect(setupPage_, &SetupPage::left, this, &BenchPlace::backToCheck);
  connect(setupPage_, &SetupPage::saved, this, [this](const BenchSetup& setup) {
    backToCheck();
    message_->say(Tone::Good, setupWords(setup, setup_.tool()));
  });
  return *setupPage_;
}

TesterPage& BenchPlace::testerPage() {
  if (testerPage_) return *testerPage_;
  testerPage_ = new TesterPage(tester_, pages_);
  pages_->addWidget(testerPage_);
  connect(testerPage_, &TesterPage::left, this, &BenchPlace::backToCheck);
  return *testerPage_;
}

void BenchPlace::openSetup() {
  SetupPage& page = setupPage();
  const BenchDraft& draft = model_.draft();
  const Result<void> begun = setup_.begin(model_.tool()->id, draft.reference, draft.by, draft.date, draft.unit);
  if (!begun) return message_->sayProblems(begun.error());
  pages_->setCurrentWidget(&page);
  page.arrive();
}

void BenchPlace::backToCheck() {
  pages_->setCurrentWidget(check_);
  goToWork();
}

// What the tester sends is entered as if it were typed; what can't be meant is told and left out.
void BenchPlace::takeReading(const TesterReading& reading) {
  const QString value = fromText(reading.value);
  const bool inSetup = pages_->currentWidget() == setupPage_;
  const Unit unit = inSetup ? setup_.draft().unit : model_.draft().unit;
  if (!isVisible() || !model_.tool() || pages_->currentWidget() == testerPage_) {
    return tell(Tone::Caution, tr("%1 came from the tester while no cell was waiting; it is not taken.").arg(value));
  }
  if (reading.negative && (inSetup || model_.draft().direction == Direction::Clockwise)) {
    return tell(Tone::Caution,
                tr("−%1 came from the tester: the other direction. It is not taken; choose counterclockwise above if "
                   "that is what is checked.")
                    .arg(value));
  }
  if (reading.unit && *reading.unit != unit) {
    if (inSetup || model_.draft().typedReadings() > 0) {
      return tell(Tone::Caution, tr("%1 %2 came from the tester, but the readings here are in %3. It is not taken; "
                                    "set the tester or “Read in”.")
                                     .arg(value, fromText(unitSign(*reading.unit)), fromText(unitSign(unit))));
    }
    form_->setUnit(*reading.unit);
    tell(Tone::Info, tr("The tester reads in %1: so does this check now.").arg(fromText(unitSign(*reading.unit))));
  }
  const bool taken = inSetup ? setupPage_->put(value) : grid_->put(value);
  if (!taken)
    tell(Tone::Caution, tr("%1 came from the tester while no cell was waiting; it is not taken.").arg(value));
}

void BenchPlace::tell(Tone tone, const QString& text) {
  MessageLine& line = pages_->currentWidget() == setupPage_    ? setupPage_->message()
                      : pages_->currentWidget() == testerPage_ ? testerPage_->message()
                                                               : *message_;
  line.say(tone, text);
}

void BenchPlace::take(const QString& tool) {
  pages_->setCurrentWidget(check_);
  pickUp(tool);
  goToWork();
}

void BenchPlace::askForTool() {
  pages_->setCurrentWidget(check_);
  form_->tool()->setFocus(Qt::TabFocusReason);
}

void BenchPlace::correct(std::int64_t check) {
  pages_->setCurrentWidget(check_);
  message_->clear();
  reason_->hide();
  offered_ = true;
  const Result<void> begun = model_.beginCorrection(check);
  if (!begun) return message_->sayProblems(begun.error());
  correction_->reason()->setFocus(Qt::TabFocusReason);
}

void BenchPlace::pickUp(const QString& tool) {
  message_->clear();
  reason_->hide();
  offered_ = true;
  const Result<void> picked = model_.pickTool(toText(tool));
  if (!picked) return message_->sayProblems(picked.error());
  const int typed = model_.draft().typedReadings();
  if (typed == 0) return;
  const WaitingDraft draft{.setup = false, .tool = toText(tool), .readings = typed, .date = model_.draft().date};
  message_->say(Tone::Info, tr("Going on with %1.").arg(waitingWords(draft)));
}

void BenchPlace::arrive() {
  if (pages_->currentWidget() == setupPage_) return setupPage_->arrive();
  if (pages_->currentWidget() == testerPage_) return testerPage_->arrive();
  if (!offered_ && !model_.tool()) offerWaiting();
  goToWork();
}

std::vector<WaitingDraft> BenchPlace::waiting() const {
  std::vector<WaitingDraft> all = model_.waitingDrafts();
  for (WaitingDraft& draft : setup_.waitingDrafts()) all.push_back(std::move(draft));
  return all;
}

QString BenchPlace::waitingText() const {
  QStringList words;
  for (const WaitingDraft& draft : waiting()) words << waitingWords(draft);
  return words.isEmpty() ? QString() : tr("Not saved yet: %1.").arg(words.join(QStringLiteral("; ")));
}

void BenchPlace::offerWaiting() {
  const std::vector<WaitingDraft> all = waiting();
  offered_ = !all.empty();
  for (const bool setup : {false, true}) {
    const Problems& trouble = setup ? setup_.draftTrouble() : model_.draftTrouble();
    if (trouble.empty()) continue;
    return message_->say(
        Tone::Caution, wordProblems(trouble),
        {{tr("Discard it"), [this, setup, tool = trouble.front().found] { discardDraft(setup, tool); }}});
  }
  if (all.empty()) return;
  const WaitingDraft& first = all.front();
  const QString tool = fromText(first.tool);
  const QString name = first.setup ? tr("the set-up on %1").arg(tool) : tool;
  message_->say(Tone::Info, waitingText(),
                {{tr("&Go on with %1").arg(name), [this, first] { goOnWith(first); }},
                 {first.setup ? tr("Discard %1").arg(name) : tr("Discard the check of %1").arg(name),
                  [this, first] { discardDraft(first.setup, first.tool); }}});
}

void BenchPlace::goOnWith(const WaitingDraft& draft) {
  take(fromText(draft.tool));
  if (draft.setup && model_.tool()) openSetup();
}

void BenchPlace::discardDraft(bool setup, const std::string& tool) {
  if (setup) {
    setup_.discardDraft(tool);
  } else {
    model_.discardDraft(tool);
  }
  message_->clear();
  offered_ = false;
  arrive();
}

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
  foot_->showTool();
  showEvaluation();
}

void BenchPlace::showEvaluation() {
  const QStringList doubts = doubtWords(model_);
  if (doubts.isEmpty()) {
    doubts_->clear();
  } else if (doubts_->text() != doubts.join(QLatin1Char('\n')) || !doubts_->isVisibleTo(this)) {
    doubts_->say(Tone::Caution, doubts.join(QLatin1Char('\n')));
  }
  foot_->showEvaluation();
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
    sayNotSaved(saved.error());
    if (bad) grid_->focusCell(bad->point, bad->reading);
    return;
  }
  if (!saved->check.corrects) rememberHeading();
  sayWhatNow(*saved);
}

void BenchPlace::sayNotSaved(const Problems& problems) {
  const Problem& first = problems.front();
  message_->sayProblems(problems);
  if (model_.draft().corrects) {
    if (first.field == "reason") correction_->reason()->setFocus(Qt::TabFocusReason);
    return;
  }
  if (first.kind != ProblemKind::Conflict || first.field != "date") return;
  const auto recorded = model_.recordedAlready();
  if (!recorded) return;
  message_->say(Tone::Bad, message_->text(), {{tr("These are right: &fix check %1").arg(*recorded), [this, recorded] {
                                                 message_->clear();
                                                 model_.becomeCorrection(*recorded, {});
                                                 correction_->reason()->setFocus(Qt::TabFocusReason);
                                               }}});
}

void BenchPlace::sayWhatNow(const SavedCheck& saved) {
  const Check& check = saved.check;
  const QString tool = fromText(check.tool);
  if (check.verdict > Verdict::ConditionalPass) return sayFailed(saved);
  std::vector<MessageLine::Action> actions;
  QString words = savedWords(saved);
  Tone tone = Tone::Good;
  if (model_.tool() && model_.tool()->status == ToolStatus::Held) {
    words += tr(" It is on hold still.");
    const QString reason =
        tr("passed %1 on %2, check %3").arg(phaseText(check.phase), dateText(check.date)).arg(check.id);
    actions.push_back(
        {tr("Release it t&o service…"), [this, tool, reason] { askFor(ToolChange::Release, tool, reason); }});
  } else if (check.phase == Phase::AsFound && drifts(saved.state)) {
    tone = Tone::Caution;
    words += saved.state == DriftState::Leaving ? tr(" It drifts, and will leave its limit before the next check.")
                                                : tr(" It drifts.");
    actions.push_back({tr("Adjusted: record as &left"), [this] { beginAsLeft(); }});
  }
  actions.push_back({tr("Correct it &for a reason…"), [this, id = check.id] { correct(id); }});
  actions.push_back({tr("Open its Histor&y"), [this, tool] { emit historyWanted(tool); }});
  message_->say(tone, words, actions);
  form_->tool()->setFocus(Qt::TabFocusReason);
}

void BenchPlace::sayFailed(const SavedCheck& saved) {
  const Check& check = saved.check;
  const QString tool = fromText(check.tool);
  const QString reason =
      tr("failed %1 on %2, check %3").arg(phaseText(check.phase), dateText(check.date)).arg(check.id);
  const bool found = check.phase == Phase::AsFound;
  std::vector<MessageLine::Action> actions{
      {found ? tr("Adjusted: record as &left") : tr("Adjusted again: record as &left"), [this] { beginAsLeft(); }}};
  if (found) actions.push_back({tr("See the &jobs in doubt"), [this, tool] { emit recallWanted(tool); }});
  if (!model_.tool() || model_.tool()->status != ToolStatus::Held) {
    actions.push_back({tr("Put it on h&old…"), [this, tool, reason] { askFor(ToolChange::Hold, tool, reason); }});
  }
  actions.push_back({tr("Retire it for &good…"), [this, tool, reason] { askFor(ToolChange::Retire, tool, reason); }});
  actions.push_back({tr("Correct it &for a reason…"), [this, id = check.id] { correct(id); }});
  actions.push_back({tr("Open its Histor&y"), [this, tool] { emit historyWanted(tool); }});
  message_->say(Tone::Bad,
                savedWords(saved) + (found ? tr(" Adjust it and record how it is left, or put it on hold. Jobs done "
                                                "with it since its last good check are in doubt.")
                                           : tr(" It can't be used as it is.")),
                actions);
  form_->tool()->setFocus(Qt::TabFocusReason);
}

void BenchPlace::beginAsLeft() {
  model_.beginAsLeft();
  // A day has one check as left: how the tool is left after all takes the place of the one before, and both stay.
  if (const auto before = model_.recordedAlready())
    model_.becomeCorrection(*before, tr("adjusted again the same day; this is how it was left"));
  message_->say(Tone::Info, tr("Now the readings as left, after the adjustment."));
  goToWork();
}

void BenchPlace::askFor(ToolChange change, const QString& tool, const QString& proposed) {
  reason_->show();
  reason_->ask(change, tool, proposed);
}

void BenchPlace::changeTool(ToolChange change, const QString& tool, const QString& reason) {
  const Result<void> changed = model_.change(change, toText(tool), toText(reason));
  if (!changed) return message_->sayProblems(changed.error());  // the line stays, for another reason
  reason_->hide();
  switch (change) {
    case ToolChange::Hold: {
      std::vector<MessageLine::Action> next;
      if (model_.tool() && fromText(model_.tool()->id) == tool && model_.draft().typedReadings() == 0)
        next.push_back({tr("Adjusted: record as &left"), [this] { beginAsLeft(); }});
      message_->say(Tone::Good, tr("%1 is on hold (%2). The Bay no longer offers it.").arg(tool, reason), next);
      break;
    }
    case ToolChange::Release:
      message_->say(Tone::Good, tr("%1 is back in service (%2).").arg(tool, reason));
      break;
    case ToolChange::Retire:
      message_->say(Tone::Good, tr("%1 is retired (%2). Its history stays.").arg(tool, reason));
      break;
  }
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
