#include "foresight_page.h"

#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <QSpinBox>

#include "chart_pane.h"
#include "history_words.h"
#include "message_line.h"
#include "path_line.h"
#include "text.h"

namespace steadyturn {
namespace {

constexpr int leastTarget = 50, mostTarget = 99;  // %, that a person may ask for
constexpr int usualTarget = 95;                   // %, in tolerance at the end of the interval

QString keepsWords(const WhatIf& whatIf) {
  const QString target = fromText(writeRounded(100 * whatIf.target, 3)) + QStringLiteral(" %");
  if (!whatIf.keepsTarget) return ForesightPage::tr("Not even a day keeps %1 inside their limits.").arg(target);
  return ForesightPage::tr("<b>%1 days</b> keep %2 inside their limits; now it is %3 days.")
      .arg(*whatIf.keepsTarget)
      .arg(target)
      .arg(whatIf.intervalNow);
}

QString wordsOf(const ForesightReportData& found) {
  QStringList words{keepsWords(found.whatIf)};
  words << ForesightPage::tr("On record: %1.").arg(fromText(observedText(found.observed)));
  const auto& own = found.scores.ownRegression;
  if (const auto score = found.scores.fleetWhereOwnSpeaks.meanLogScore()) {
    words << ForesightPage::tr(
                 "On the %1 checks that its own regression could predict, the fleet's mean log score was "
                 "%2 against its %3.")
                 .arg(own.forecasts())
                 .arg(fromText(signedNumber(*score, 3)), fromText(signedNumber(own.meanLogScore().value_or(0), 3)));
  }
  if (!found.assumption.empty()) words << fromText(found.assumption);
  for (const ReviewedInterval& one : found.methods) {
    const QString days =
        one.intervalDays ? ForesightPage::tr("%1 days").arg(*one.intervalDays) : ForesightPage::tr("can't tell");
    words << QStringLiteral("%1: %2 (%3).").arg(fromText(one.method), days, fromText(one.because).toHtmlEscaped());
  }
  words << ForesightPage::tr(
      "Methods and steps: ILAC-G24 / OIML D 10, common practice. Risk: the fleet's model, from "
      "each tool's newest check.");
  return words.join(QLatin1Char(' '));
}

}  // namespace

ForesightPage::ForesightPage(OpenShop& shop, MessageLine* message, QWidget* parent)
    : QWidget(parent),
      model_(shop),
      message_(message),
      working_(new QLabel(this)),
      note_(new QLabel(this)),
      words_(new QLabel(this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addLayout(makeQuestion());
  column->addLayout(makeCharts(), 1);
  words_->setWordWrap(true);
  words_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  column->addWidget(words_);
  column->addLayout(makeFiles());
  connect(&model_, &ForesightModel::told, this, &ForesightPage::tell);
  connect(&model_, &ForesightModel::refused, message_, &MessageLine::sayProblems);
  connect(&model_, &ForesightModel::workingChanged, this,
          [this](bool working) { working_->setText(working ? tr("Working it out …") : QString()); });
  connect(&model_, &ForesightModel::progressed, this,
          [this](double part) { working_->setText(tr("Working it out … %1 %").arg(qRound(100 * part))); });
  tell();
}

QLayout* ForesightPage::makeQuestion() {
  scope_ = new QComboBox(this);
  scope_->setAccessibleName(tr("Whose predictions and interval"));
  scope_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  target_ = new QSpinBox(this);
  target_->setAccessibleName(tr("Share to be inside at the end of the interval"));
  target_->setRange(leastTarget, mostTarget);
  target_->setValue(usualTarget);
  target_->setSuffix(tr(" %"));
  target_->setKeyboardTracking(false);
  auto* scopeLabel = new QLabel(tr("&For"), this);
  scopeLabel->setBuddy(scope_);
  auto* targetLabel = new QLabel(tr("to be &inside at the end"), this);
  targetLabel->setBuddy(target_);
  note_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  auto* row = new QHBoxLayout;
  row->addWidget(scopeLabel);
  row->addWidget(scope_);
  row->addWidget(targetLabel);
  row->addWidget(target_);
  row->addSpacing(12);
  row->addWidget(working_);
  row->addWidget(note_, 1);
  connect(scope_, &QComboBox::activated, this, &ForesightPage::ask);
  connect(target_, &QSpinBox::valueChanged, this, &ForesightPage::ask);
  return row;
}

ChartPane* ForesightPage::makePane(const QString& name) {
  auto* pane = new ChartPane(name, this);
  pane->setMinimumHeight(180);
  connect(pane, &ChartPane::told, note_, &QLabel::setText);
  return pane;
}

QLayout* ForesightPage::makeCharts() {
  coverage_ = makePane(tr("Chart of what the intervals of earlier predictions held"));
  risk_ = makePane(tr("Chart of the risk of a checking interval"));
  effort_ = makePane(tr("Chart of the checks a year that an interval takes"));
  auto* grid = new QGridLayout;
  grid->setSpacing(8);
  grid->addWidget(coverage_, 0, 0, 2, 1);
  grid->addWidget(risk_, 0, 1);
  grid->addWidget(effort_, 1, 1);
  grid->setColumnStretch(0, 1);
  grid->setColumnStretch(1, 1);
  grid->setRowStretch(0, 1);
  grid->setRowStretch(1, 1);
  return grid;
}

QLayout* ForesightPage::makeFiles() {
  picture_ = new QComboBox(this);
  picture_->setAccessibleName(tr("Which chart as .svg or .png"));
  picture_->addItem(tr("earlier predictions"), static_cast<int>(ForesightModel::Chart::Coverage));
  picture_->addItem(tr("risk"), static_cast<int>(ForesightModel::Chart::Risk));
  picture_->addItem(tr("effort"), static_cast<int>(ForesightModel::Chart::Effort));
  file_ = new PathLine(PathLine::Direction::Write, tr("File for the chart or the report"), tr("&Write it"),
                       tr("SVG (*.svg);;PNG (*.png);;PDF report (*.pdf);;CSV (*.csv)"), this);
  auto* label = new QLabel(tr("Ch&art as .svg or .png, all of it as .pdf or .csv"), this);
  label->setBuddy(picture_);
  auto* row = new QHBoxLayout;
  row->addWidget(label);
  row->addWidget(picture_);
  row->addWidget(file_, 1);
  connect(picture_, &QComboBox::currentIndexChanged, this, &ForesightPage::suggestFile);
  connect(file_, &PathLine::confirmed, this, [this] {
    if (!file_->wouldReplace()) return writeFile();
    message_->say(Tone::Caution, tr("%1 exists already.").arg(file_->path()), {{tr("&Replace it"), [this] {
                                                                                  file_->agreeToReplace();
                                                                                  writeFile();
                                                                                }}});
  });
  return row;
}

void ForesightPage::open(const Tool* tool) {
  {
    const QSignalBlocker quiet(scope_);
    scope_->clear();
    if (tool) {
      const QString kind = QStringLiteral("type %1 class %2")
                               .arg(fromText(writeType(tool->kind.type)), fromText(writeClass(tool->kind.cls)));
      scope_->addItem(fromText(tool->id), fromText(tool->id));
      scope_->addItem(kind, kind);
    }
    scope_->addItem(tr("the whole shop"), QString());
  }
  scope_->setFocus(Qt::OtherFocusReason);
  ask();
}

void ForesightPage::ask() {
  message_->clear();
  model_.ask(toText(scope_->currentData().toString()), target_->value() / 100.0);
}

void ForesightPage::tell() {
  const auto& found = model_.found();
  const auto draw = [&](ChartPane* pane, ForesightModel::Chart chart) {
    if (!found) return pane->clear();
    pane->show(std::make_shared<const ChartModel>(model_.chart(chart)));
  };
  draw(coverage_, ForesightModel::Chart::Coverage);
  draw(risk_, ForesightModel::Chart::Risk);
  draw(effort_, ForesightModel::Chart::Effort);
  words_->setText(found ? wordsOf(*found) : QString());
  file_->setActionEnabled(found.has_value());
  suggestFile();
}

void ForesightPage::suggestFile() {
  const auto& found = model_.found();
  if (!found) return;
  QString scope = fromText(found->whatIf.scope);
  for (QChar& letter : scope) {
    if (!letter.isLetterOrNumber()) letter = QLatin1Char('-');
  }
  const char* const names[] = {"predictions", "risk", "effort"};
  file_->suggest(QStringLiteral("%1-%2.svg").arg(QLatin1String(names[picture_->currentData().toInt()]), scope));
}

void ForesightPage::writeFile() {
  const auto chart = static_cast<ForesightModel::Chart>(picture_->currentData().toInt());
  const Result<IssuedFile> done = model_.write(chart, file_->path());
  if (!done) return message_->sayProblems(done.error());
  file_->rememberFolder();
  sayIssued(*message_, *done);
}

}  // namespace steadyturn
