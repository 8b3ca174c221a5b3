#include "story_page.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QStandardItemModel>
#include <QTableView>

#include "chart_file.h"
#include "chart_pane.h"
#include "control_drawing.h"
#include "message_line.h"
#include "path_line.h"
#include "source_words.h"
#include "table_look.h"
#include "text.h"

namespace steadyturn {
namespace {

QString fileWord(const QString& text) {
  QString word;
  for (const QChar letter : text)
    word += letter.isLetterOrNumber() || letter == QLatin1Char('.') ? letter : QLatin1Char('-');
  return word;
}

}  // namespace

StoryPage::StoryPage(HistoryModel& model, MessageLine* message, QWidget* parent)
    : QWidget(parent),
      model_(model),
      message_(message),
      note_(new QLabel(this)),
      source_(new QLabel(this)),
      table_(new QTableView(this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addLayout(makeLooks());
  column->addWidget(makeCharts(), 3);
  table_->setModel(&model_.checks());
  dressTable(*table_, tr("Checks at this set-point"));
  setColumns(*table_, {11, 10, 11, 12, 12, 18, 12, 17, 10, 0});
  table_->setMinimumHeight(140);
  column->addWidget(table_, 2);
  source_->setWordWrap(true);
  source_->setForegroundRole(QPalette::PlaceholderText);
  column->addWidget(source_);
  column->addLayout(makeFiles());
  connect(table_->selectionModel(), &QItemSelectionModel::currentChanged, this, &StoryPage::followTable);
  showNote({});
}

QLayout* StoryPage::makeLooks() {
  along_ = new QComboBox(this);
  along_->setAccessibleName(tr("What the chart goes by"));
  along_->addItem(tr("the calendar"));
  along_->addItem(tr("tightenings on record"));
  auto* label = new QLabel(tr("Chart &goes by"), this);
  label->setBuddy(along_);
  control_ = new QCheckBox(tr("Co&ntrol chart beside it"), this);
  control_->setChecked(true);
  note_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  auto* row = new QHBoxLayout;
  row->addWidget(label);
  row->addWidget(along_);
  row->addWidget(control_);
  row->addSpacing(12);
  row->addWidget(note_, 1);
  connect(along_, &QComboBox::currentIndexChanged, this, &StoryPage::drawCharts);
  connect(control_, &QCheckBox::toggled, this, &StoryPage::drawCharts);
  return row;
}

QWidget* StoryPage::makeCharts() {
  drift_ = new ChartPane(tr("Chart of the tool's deviations over time"), this);
  controlChart_ = new ChartPane(tr("Control chart of the checks as found"), this);
  auto* charts = new QWidget(this);
  auto* row = new QHBoxLayout(charts);
  row->setContentsMargins(0, 0, 0, 0);
  row->addWidget(drift_, 3);
  row->addWidget(controlChart_, 2);
  charts->setMinimumHeight(260);
  for (ChartPane* pane : {drift_, controlChart_}) {
    connect(pane, &ChartPane::told, this, &StoryPage::showNote);
    connect(pane, &ChartPane::taken, this, &StoryPage::followChart);
  }
  return charts;
}

QLayout* StoryPage::makeFiles() {
  certificate_ = new PathLine(PathLine::Direction::Write, tr("File for the certificate of the selected check"),
                              tr("&Write it"), tr("PDF (*.pdf);;Digital Calibration Certificate (*.xml)"), this);
  chartFile_ = new PathLine(PathLine::Direction::Write, tr("File for the chart"), tr("Wr&ite chart"),
                            tr("SVG (*.svg);;PNG (*.png);;PDF report (*.pdf);;CSV (*.csv)"), this);
  auto* certificateLabel = new QLabel(tr("&Certificate of the selected check as .pdf or .xml"), this);
  certificateLabel->setBuddy(certificate_);
  auto* chartLabel = new QLabel(tr("Ch&art as .svg or .png, history as .pdf or .csv"), this);
  chartLabel->setBuddy(chartFile_);
  auto* grid = new QGridLayout;
  grid->setVerticalSpacing(2);
  grid->setHorizontalSpacing(20);
  grid->addWidget(certificateLabel, 0, 0);
  grid->addWidget(chartLabel, 0, 1);
  passphrase_ = new QLineEdit(this);
  passphrase_->setAccessibleName(tr("Passphrase of the signing key"));
  passphrase_->setPlaceholderText(tr("passphrase, to sign it"));
  passphrase_->setEchoMode(QLineEdit::Password);
  passphrase_->setMaximumWidth(190);
  auto* certificateRow = new QHBoxLayout;
  certificateRow->addWidget(certificate_, 1);
  certificateRow->addWidget(passphrase_);
  grid->addLayout(certificateRow, 1, 0);
  grid->addWidget(chartFile_, 1, 1);
  grid->setColumnStretch(0, 1);
  grid->setColumnStretch(1, 1);
  connect(certificate_, &PathLine::confirmed, this,
          [this] { unlessReplacing(certificate_, [this] { writeCertificate(); }); });
  connect(chartFile_, &PathLine::confirmed, this, [this] { unlessReplacing(chartFile_, [this] { writeChart(); }); });
  return grid;
}

std::int64_t StoryPage::selectedCheck() const { return model_.checks().checkAt(table_->currentIndex().row()); }

Along StoryPage::along() const { return along_->currentIndex() == 1 ? Along::Uses : Along::Calendar; }

void StoryPage::takeFocus() { table_->setFocus(Qt::OtherFocusReason); }

void StoryPage::tell() {
  const auto& story = model_.story();
  const bool checked = story && !story->targets.empty();
  if (checked) {
    source_->setText(sourceWords(story->data));
  } else if (story) {
    source_->setText(tr("%1 has no check on record yet: check it at the Bench.").arg(fromText(story->data.tool.id)));
  }
  const bool uses = checked && canGoByUses(story->data);
  {
    const QSignalBlocker quiet(along_);
    if (!uses) along_->setCurrentIndex(0);
  }
  along_->setEnabled(uses);
  along_->setToolTip(uses ? QString() : tr("Tightenings with this tool are on record on less than two days."));
  passphrase_->setVisible(model_.canSign());
  drawCharts();
  if (table_->model()->rowCount() > 0) table_->setCurrentIndex(table_->model()->index(0, 0));
  showFiles();
}

void StoryPage::drawCharts() {
  const auto& story = model_.story();
  const bool checked = story && !story->targets.empty();
  const auto control = checked ? controlChart(story->data) : std::nullopt;
  control_->setEnabled(control.has_value());
  control_->setToolTip(control ? QString() : tr("A control chart needs two checks as found."));
  controlChart_->setVisible(control && control_->isChecked());
  if (checked) {
    drift_->show(std::make_shared<const ChartModel>(historyChart(story->data, along())));
  } else {
    drift_->clear();
  }
  if (control) {
    controlChart_->show(std::make_shared<const ChartModel>(*control));
  } else {
    controlChart_->clear();
  }
}

void StoryPage::followTable() {
  if (!drift_->hasFocus()) drift_->point(selectedCheck());
  showFiles();
  emit selectionChanged();
}

void StoryPage::followChart(qint64 record) {
  const int row = model_.checks().rowOf(record);
  if (row >= 0) table_->setCurrentIndex(table_->model()->index(row, 0));
}

void StoryPage::showNote(const QString& note) {
  note_->setForegroundRole(note.isEmpty() ? QPalette::PlaceholderText : QPalette::WindowText);
  note_->setText(note.isEmpty()
                     ? tr("Wheel or + − looks closer, dragging moves, ← → go from check to check, Home shows all.")
                     : note);
}

void StoryPage::showFiles() {
  const std::int64_t check = selectedCheck();
  certificate_->setActionEnabled(check != 0);
  const bool chart = model_.story() && !model_.story()->targets.empty();
  chartFile_->setActionEnabled(chart);
  if (check != 0) certificate_->suggest(QStringLiteral("certificate-%1.pdf").arg(check));
  if (chart) {
    const HistoryData& history = model_.story()->data;
    chartFile_->suggest(fileWord(fromText(history.tool.id) + QStringLiteral("-") +
                                 fromText(writeRounded(history.target.value)) + QStringLiteral("-") +
                                 fromText(unitCode(history.target.unit))) +
                        QStringLiteral(".svg"));
  }
}

void StoryPage::unlessReplacing(PathLine* line, const std::function<void()>& write) {
  if (!line->wouldReplace()) return write();
  message_->say(Tone::Caution, tr("%1 exists already.").arg(line->path()), {{tr("&Replace it"), [line, write] {
                                                                               line->agreeToReplace();
                                                                               write();
                                                                             }}});
}

void StoryPage::writeCertificate() {
  if (selectedCheck() == 0) return;
  certificate_->rememberFolder();
  model_.writeCertificate(selectedCheck(), certificate_->path(), passphrase_->text());
  passphrase_->clear();
}

void StoryPage::writeChart() {
  if (!model_.story()) return;
  const HistoryFile file{.history = model_.story()->data, .along = along()};
  const Result<IssuedFile> done = writeHistoryFile(model_.shop(), file, chartFile_->path());
  if (!done) return message_->sayProblems(done.error());
  chartFile_->rememberFolder();
  sayIssued(*message_, *done);
}

}  // namespace steadyturn
