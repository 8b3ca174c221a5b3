#include "setup_page.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QRegularExpression>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "bench_words.h"
#include "message_line.h"
#include "series_grid.h"
#include "text.h"

namespace steadyturn {
namespace {

QString runName(SetupRun run) {
  switch (run) {
    case SetupRun::Reproducibility:
      return SetupPage::tr("Reproducibility");
    case SetupRun::Drive:
      return SetupPage::tr("Output drive");
    case SetupRun::Interface:
      return SetupPage::tr("Interface (adapter)");
    case SetupRun::LoadingPoint:
      return SetupPage::tr("Loading point");
  }
  return {};
}

// "loading_point[0][3]", as the shop counts, in the words of the page.
Problems inWords(Problems problems) {
  static const QRegularExpression series(QStringLiteral("\\[(\\d+)\\](?:\\[(\\d+)\\])?$"));
  for (Problem& problem : problems) {
    QString field = fromText(problem.field);
    const QRegularExpressionMatch match = series.match(field);
    if (!match.hasMatch()) continue;
    field.truncate(match.capturedStart());
    field += SetupPage::tr(", series %1").arg(match.captured(1).toInt() + 1);
    if (match.hasCaptured(2)) field += SetupPage::tr(", reading %1").arg(match.captured(2).toInt() + 1);
    problem.field = toText(field);
  }
  return problems;
}

QString spanText(double span) { return QString::number(span, 'f', 2) + QStringLiteral(" %"); }

QString standingOf(const RunFigures& figures, const TypedRun& typed, SetupRun run) {
  const int readings = typed.typedReadings();
  if (readings == 0 && typed.span.trimmed().isEmpty()) return SetupPage::tr("not taken");
  if (readings == 0) return figures.span ? SetupPage::tr("typed: %1").arg(spanText(*figures.span)) : typed.span;
  if (figures.complete && figures.span) return SetupPage::tr("span %1").arg(spanText(*figures.span));
  QString text = SetupPage::tr("%1 of %2 readings").arg(readings).arg(typed.series.size() * rulesFor(run).readings);
  if (figures.span) text += SetupPage::tr(", span so far %1").arg(spanText(*figures.span));
  return text;
}

}  // namespace

SetupPage::SetupPage(SetupModel& model, QWidget* parent)
    : QWidget(parent),
      model_(model),
      message_(new MessageLine(this)),
      title_(new QLabel(this)),
      sheets_(new QStackedWidget(this)),
      basis_(new QLineEdit(this)),
      save_(new QPushButton(tr("Save the set-&up"), this)) {
  auto* column = new QVBoxLayout(this);
  title_->setWordWrap(true);
  column->addWidget(title_);
  column->addWidget(message_);
  auto* row = new QHBoxLayout;
  row->setSpacing(24);
  row->addWidget(makeRuns());
  for (const SetupRun run : allSetupRuns) sheets_->addWidget(makeSheet(run));
  row->addWidget(sheets_, 1);
  column->addLayout(row);
  column->addStretch(1);
  basis_->setAccessibleName(tr("Basis of the typed spans"));
  basis_->setPlaceholderText(tr("needed with a typed span: the certificate, the standard's table, another bench …"));
  auto* basisName = new QLabel(tr("&Basis of typed spans"), this);
  basisName->setBuddy(basis_);
  save_->setAutoDefault(true);
  auto* back = new QPushButton(tr("Back to the chec&k"), this);
  auto* foot = new QHBoxLayout;
  foot->addWidget(basisName);
  foot->addWidget(basis_, 1);
  foot->addWidget(save_);
  foot->addWidget(back);
  column->addLayout(foot);
  connect(basis_, &QLineEdit::textEdited, &model_, &SetupModel::setBasis);
  connect(basis_, &QLineEdit::editingFinished, &model_, &SetupModel::keepDraft);
  connect(save_, &QPushButton::clicked, this, &SetupPage::save);
  connect(back, &QPushButton::clicked, this, &SetupPage::left);
  connect(&model_, &SetupModel::begun, this, &SetupPage::rebuild);
  connect(&model_, &SetupModel::changed, this, &SetupPage::showFigures);
  connect(&model_, &SetupModel::seriesChanged, this,
          [this](SetupRun run) { runs_[static_cast<std::size_t>(run)].grid->rebuild(); });
}

QWidget* SetupPage::makeRuns() {
  auto* box = new QWidget(this);
  box->setFixedWidth(300);
  auto* column = new QVBoxLayout(box);
  column->setContentsMargins(0, 8, 0, 0);
  for (const SetupRun run : allSetupRuns) {
    auto* choice = new QRadioButton(runName(run), box);
    column->addWidget(choice);
    connect(choice, &QRadioButton::clicked, this, [this, run] { go(run); });
    runs_[static_cast<std::size_t>(run)].choice = choice;
  }
  runs_.front().choice->setChecked(true);
  column->addStretch();
  return box;
}

QWidget* SetupPage::makeSheet(SetupRun run) {
  auto* sheet = new QWidget(sheets_);
  auto* column = new QVBoxLayout(sheet);
  column->setContentsMargins(0, 8, 0, 0);
  const RunRules& rules = rulesFor(run);
  auto* how = new QLabel(
      fromText(rules.how) + QStringLiteral(" ") + tr("%1 readings in each series (ISO 6789-2).").arg(rules.readings),
      sheet);
  how->setWordWrap(true);
  column->addWidget(how);
  const auto [few, many] = rules.series;
  if (few != many) {
    auto* shape = new QComboBox(sheet);
    shape->setAccessibleName(tr("%1: square or hexagon").arg(runName(run)));
    shape->addItem(tr("square, %1 positions").arg(few), static_cast<int>(few));
    shape->addItem(tr("hexagon, %1 positions").arg(many), static_cast<int>(many));
    column->addWidget(shape, 0, Qt::AlignLeft);
    connect(shape, &QComboBox::currentIndexChanged, this,
            [this, run, shape] { model_.setSeries(run, static_cast<std::size_t>(shape->currentData().toInt())); });
    connect(&model_, &SetupModel::begun, shape, [this, run, shape] {
      shape->setCurrentIndex(shape->findData(static_cast<int>(model_.run(run).series.size())));
    });
  }
  auto* grid = new SeriesGrid(model_, run, sheet);
  runs_[static_cast<std::size_t>(run)].grid = grid;
  connect(grid, &SeriesGrid::finished, this, [this, run] { goOnFrom(run); });
  column->addWidget(grid);
  column->addWidget(makeSpanLine(run));
  column->addStretch();
  return sheet;
}

QWidget* SetupPage::makeSpanLine(SetupRun run) {
  auto* line = new QWidget(sheets_);
  auto* row = new QHBoxLayout(line);
  row->setContentsMargins(0, 6, 0, 0);
  auto* span = new QLineEdit(line);
  span->setAccessibleName(tr("%1: typed span, %").arg(runName(run)));
  span->setAlignment(Qt::AlignRight);
  span->setFixedWidth(76);
  auto* name = new QLabel(tr("or &type its span, %, and its basis below"), line);
  name->setBuddy(span);
  row->addWidget(span);
  row->addWidget(name);
  row->addStretch();
  connect(span, &QLineEdit::textEdited, this, [this, run](const QString& text) { model_.setSpan(run, text); });
  connect(span, &QLineEdit::editingFinished, &model_, &SetupModel::keepDraft);
  connect(span, &QLineEdit::returnPressed, this, [this, run] { goOnFrom(run); });
  runs_[static_cast<std::size_t>(run)].span = span;
  return line;
}

void SetupPage::arrive() { go(SetupRun::Reproducibility); }

void SetupPage::go(SetupRun run) {
  Run& at = runs_[static_cast<std::size_t>(run)];
  at.choice->setChecked(true);
  sheets_->setCurrentIndex(static_cast<int>(run));
  at.grid->focusFirstEmpty();
}

void SetupPage::goOnFrom(SetupRun run) {
  const auto next = static_cast<std::size_t>(run) + 1;
  if (next < allSetupRuns.size()) return go(allSetupRuns[next]);
  save_->setFocus(Qt::TabFocusReason);
}

bool SetupPage::put(const QString& reading) {
  return runs_[static_cast<std::size_t>(sheets_->currentIndex())].grid->put(reading);
}

void SetupPage::rebuild() {
  if (!model_.plan()) return;
  const BenchSetupPlan& plan = *model_.plan();
  const SetupDraft& draft = model_.draft();
  const ToolModel& like = plan.model;
  title_->setText(tr("Bench set-up on %1, for every tool of its model (%2, %3), at the lowest set-point, %4. Read on "
                     "%5. A run may "
                     "be left out; it then counts as 0 in the budget and is listed as not evaluated.")
                      .arg(fromText(model_.tool()),
                           fromText(like.maker.empty() ? like.description : like.maker + ", " + like.description),
                           fromText(describe(like.kind)),
                           draft.target + QStringLiteral(" ") + fromText(unitSign(draft.unit)),
                           draft.reference.isEmpty() ? tr("no reference picked yet") : draft.reference));
  for (const SetupRun run : allSetupRuns) {
    Run& at = runs_[static_cast<std::size_t>(run)];
    at.grid->rebuild();
    at.span->setText(model_.run(run).span);
  }
  basis_->setText(draft.basis);
  sayGoingOn();
}

// What is taken up again is said, for it may be another day's.
void SetupPage::sayGoingOn() {
  if (!model_.typed()) return message_->clear();
  const SetupDraft& draft = model_.draft();
  std::vector<MessageLine::Action> actions{{tr("Begin anew"), [this] {
                                              const SetupDraft before = model_.clear();
                                              message_->say(Tone::Info, tr("The set-up is cleared."),
                                                            {{tr("Put it back"), [this, before] {
                                                                model_.putBack(before);
                                                                arrive();
                                                              }}});
                                              arrive();
                                            }}};
  if (const QString other = model_.otherReference(); !other.isEmpty())
    actions.push_back({tr("It is read on %1").arg(other), [this, other] { model_.readOn(other); }});
  message_->say(
      Tone::Info,
      tr("Going on with %1.")
          .arg(waitingWords(
              {.setup = true, .tool = model_.tool(), .readings = draft.typedReadings(), .date = draft.date})),
      actions);
}

void SetupPage::showFigures() {
  for (const SetupRun run : allSetupRuns) {
    Run& at = runs_[static_cast<std::size_t>(run)];
    at.grid->showFigures();
    at.choice->setText(runName(run) + QLatin1Char('\n') + standingOf(model_.figures(run), model_.run(run), run));
  }
  save_->setEnabled(model_.typed());
}

void SetupPage::save() {
  const std::string tool = model_.tool();
  const Result<BenchSetup> setup = model_.save();
  if (!setup) return message_->sayProblems(inWords(setup.error()));
  message_->clear();
  emit saved(*setup);
}

void SetupPage::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return void(emit left());
  QWidget::keyPressEvent(event);
}

QString setupWords(const BenchSetup& setup, const std::string& tool) {
  QStringList spans;
  for (const SetupRun run : allSetupRuns) {
    if (const auto& span = spanOf(setup.spans, run))
      spans << QStringLiteral("%1 %2").arg(runName(run).toLower(), spanText(*span));
  }
  return SetupPage::tr("Bench set-up %1 is saved for every tool like %2: %3.")
      .arg(QString::number(setup.id), fromText(tool), spans.join(QStringLiteral(", ")));
}

}  // namespace steadyturn
