#include "tester_page.h"

#include <QComboBox>
#include <QFontDatabase>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSerialPortInfo>
#include <QTableWidget>

#include "message_line.h"
#include "problem_text.h"
#include "table_look.h"
#include "text.h"

namespace steadyturn {

TesterPage::TesterPage(TesterPort& port, QWidget* parent)
    : QWidget(parent),
      port_(port),
      message_(new MessageLine(this)),
      ports_(new QComboBox(this)),
      baud_(new QComboBox(this)),
      pattern_(new QLineEdit(this)),
      peak_(new QLineEdit(this)),
      wrong_(new QLabel(this)),
      sample_(new QPlainTextEdit(this)),
      tried_(new QTableWidget(0, 2, this)),
      connect_(new QPushButton(this)) {
  auto* column = new QVBoxLayout(this);
  auto* title = new QLabel(
      tr("A torque tester on a serial port fills the focused cell and moves on, as if it were typed. A tester, a "
         "foot switch or a scanner that types like a keyboard needs nothing here."),
      this);
  title->setWordWrap(true);
  column->addWidget(title);
  column->addWidget(message_);
  auto* grid = new QGridLayout;
  const auto place = [&](const QString& label, QWidget* field, int row, int at) {
    auto* name = new QLabel(label, this);
    name->setBuddy(field);
    field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
    grid->addWidget(name, row, at);
    grid->addWidget(field, row + 1, at);
  };
  place(tr("&Port"), ports_, 0, 0);
  place(tr("Spee&d, baud"), baud_, 0, 1);
  place(tr("Patte&rn of a line"), pattern_, 0, 2);
  place(tr("Peak &mark"), peak_, 0, 3);
  grid->setColumnStretch(2, 1);
  column->addLayout(grid);
  ports_->setEditable(true);
  ports_->setMinimumContentsLength(16);
  for (const int speed : {1200, 2400, 4800, 9600, 19200, 38400, 57600, 115200})
    baud_->addItem(QString::number(speed), speed);
  peak_->setPlaceholderText(tr("none: every line counts"));
  peak_->setMinimumWidth(190);
  auto* fields = new QLabel(
      tr("{value} the reading, {unit} its unit, {mark} a word that tells peaks from running values, {skip} any one "
         "word, {rest} what follows. A space stands for any number of spaces."),
      this);
  fields->setWordWrap(true);
  fields->setForegroundRole(QPalette::PlaceholderText);
  column->addWidget(fields);
  wrong_->setWordWrap(true);
  column->addWidget(wrong_);
  auto* sampleName = new QLabel(tr("Paste a samp&le of what it sends"), this);
  sampleName->setBuddy(sample_);
  sample_->setAccessibleName(tr("A sample of what the tester sends"));
  sample_->setTabChangesFocus(true);
  sample_->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
  tried_->setHorizontalHeaderLabels({tr("Line"), tr("What it is by the pattern")});
  dressTable(*tried_, tr("The sample's lines by the pattern"));
  setColumns(*tried_, {30, 0});
  column->addWidget(sampleName);
  auto* row = new QHBoxLayout;
  row->addWidget(sample_, 2);
  row->addWidget(tried_, 3);
  column->addLayout(row, 1);
  auto* back = new QPushButton(tr("Back to the chec&k"), this);
  auto* foot = new QHBoxLayout;
  foot->addStretch();
  foot->addWidget(connect_);
  foot->addWidget(back);
  column->addLayout(foot);

  const TesterSettings settings = TesterSettings::remembered();
  listPorts();
  if (!settings.port.isEmpty()) ports_->setEditText(settings.port);
  baud_->setCurrentIndex(baud_->findData(settings.baud));
  pattern_->setText(settings.pattern);
  peak_->setText(settings.peakMark);
  connect(pattern_, &QLineEdit::textChanged, this, &TesterPage::tryOut);
  connect(peak_, &QLineEdit::textChanged, this, &TesterPage::tryOut);
  connect(sample_, &QPlainTextEdit::textChanged, this, &TesterPage::tryOut);
  connect(connect_, &QPushButton::clicked, this, &TesterPage::toggle);
  connect(back, &QPushButton::clicked, this, &TesterPage::left);
  connect(&port_, &TesterPort::stateChanged, this, &TesterPage::showState);
  showState();
  tryOut();
}

void TesterPage::arrive() {
  if (!port_.isWanted()) {
    const QString kept = ports_->currentText();
    listPorts();
    if (!kept.isEmpty()) ports_->setEditText(kept);
  }
  ports_->setFocus(Qt::TabFocusReason);
}

void TesterPage::listPorts() {
  ports_->clear();
  for (const QSerialPortInfo& info : QSerialPortInfo::availablePorts()) ports_->addItem(info.portName());
}

TesterSettings TesterPage::typed() const {
  return {.port = ports_->currentText().trimmed(),
          .baud = baud_->currentData().toInt(),
          .pattern = pattern_->text(),
          .peakMark = peak_->text().trimmed()};
}

void TesterPage::tryOut() {
  const TesterSettings settings = typed();
  const Result<TesterPattern> pattern = parsePattern(toText(settings.pattern), toText(settings.peakMark));
  wrong_->setText(pattern ? QString() : wordProblems(pattern.error()));
  wrong_->setHidden(pattern.has_value());
  const std::vector<TriedLine> tried =
      pattern ? tryPattern(*pattern, toText(sample_->toPlainText())) : std::vector<TriedLine>{};
  tried_->setRowCount(static_cast<int>(tried.size()));
  for (std::size_t i = 0; i < tried.size(); ++i) {
    auto* line = new QTableWidgetItem(fromText(tried[i].line));
    auto* what = new QTableWidgetItem;
    const bool good = tried[i].reading.has_value();
    const bool peak = good && tried[i].reading->peak;
    what->setData(lookRole, QVariant::fromValue(Look{!good  ? Sign::Cross
                                                     : peak ? Sign::Tick
                                                            : Sign::Dash,
                                                     !good  ? Tone::Bad
                                                     : peak ? Tone::Good
                                                            : Tone::Quiet,
                                                     triedWords(tried[i])}));
    what->setText(triedWords(tried[i]));
    what->setToolTip(triedWords(tried[i]));
    tried_->setItem(static_cast<int>(i), 0, line);
    tried_->setItem(static_cast<int>(i), 1, what);
  }
}

void TesterPage::toggle() {
  message_->clear();
  if (port_.isWanted()) return port_.close();
  const Result<void> opened = port_.open(typed());
  if (!opened) return message_->sayProblems(opened.error());
  message_->say(Tone::Good,
                tr("Connected to %1. The next reading goes into the focused cell of the Bench.").arg(port_.name()));
}

void TesterPage::showState() {
  const bool wanted = port_.isWanted();
  connect_->setText(wanted ? tr("Dis&connect") : tr("&Connect"));
  for (QWidget* field : std::initializer_list<QWidget*>{ports_, baud_, pattern_, peak_}) field->setEnabled(!wanted);
}

void TesterPage::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return void(emit left());
  QWidget::keyPressEvent(event);
}

}  // namespace steadyturn
