#include "history_place.h"

#include <QComboBox>
#include <QEvent>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QTableView>
#include <QtCharts/QChartView>

#include "chart_picture.h"
#include "history_words.h"
#include "make_chart.h"
#include "message_line.h"
#include "path_line.h"
#include "picker.h"
#include "save_file.h"
#include "table_look.h"
#include "text.h"

namespace steadyturn {
namespace {

constexpr QSize chartFileSize(1200, 640);

QString fileWord(const QString& text) {
  QString word;
  for (const QChar letter : text)
    word += letter.isLetterOrNumber() || letter == QLatin1Char('.') ? letter : QLatin1Char('-');
  return word;
}

Result<void> writeChartFile(const ChartModel& chart, const QString& path) {
  const bool svg = path.endsWith(QStringLiteral(".svg"), Qt::CaseInsensitive);
  if (!svg && !path.endsWith(QStringLiteral(".png"), Qt::CaseInsensitive)) {
    return refuse({.field = "chart file", .found = toText(path), .accepted = "a name that ends in .svg or .png"});
  }
  // A file is looked at on paper and in mails: always on a light ground.
  return saveFile(path, [&](QIODevice& out) {
    return svg ? writeChartSvg(chart, lightTheme(), chartFileSize, out)
               : writeChartPng(chart, lightTheme(), chartFileSize, out);
  });
}

}  // namespace

HistoryPlace::HistoryPlace(OpenShop& shop, QWidget* parent)
    : QWidget(parent),
      model_(shop),
      message_(new MessageLine(this)),
      view_(new QChartView(this)),
      table_(new QTableView(this)),
      source_(new QLabel(this)) {
  auto* column = new QVBoxLayout(this);
  column->addLayout(makeHead());
  column->addWidget(message_);
  view_->setAccessibleName(tr("Chart of the tool's deviations over time"));
  view_->setFrameShape(QFrame::NoFrame);
  view_->setRenderHint(QPainter::Antialiasing);
  view_->setFocusPolicy(Qt::NoFocus);
  view_->setMinimumHeight(260);
  column->addWidget(view_, 3);
  table_->setModel(&model_.checks());
  dressTable(*table_, tr("Checks at this set-point"));
  setColumns(*table_, {11, 10, 11, 12, 12, 18, 12, 17, 10, 0});
  table_->setMinimumHeight(140);
  column->addWidget(table_, 2);
  source_->setWordWrap(true);
  source_->setForegroundRole(QPalette::PlaceholderText);
  column->addWidget(source_);
  column->addLayout(makeFiles());

  connect(&model_, &HistoryModel::toolsChanged, this, &HistoryPlace::offerTools);
  connect(&model_, &HistoryModel::told, this, &HistoryPlace::tell);
  connect(&model_, &HistoryModel::refused, message_, &MessageLine::sayProblems);
  connect(&model_, &HistoryModel::workingChanged, working_, &QLabel::setVisible);
  connect(&model_, &HistoryModel::written, this,
          [this](const QString& path) { message_->say(Tone::Good, tr("Written: %1").arg(path)); });
  connect(table_->selectionModel(), &QItemSelectionModel::currentChanged, this, &HistoryPlace::showFiles);
  offerTools();
  tell();
}

HistoryPlace::~HistoryPlace() = default;

QLayout* HistoryPlace::makeHead() {
  tool_ = new Picker(tr("Tool"), tr("type its mark or description"), this);
  target_ = new QComboBox(this);
  target_->setAccessibleName(tr("Set-point"));
  target_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  target_->setMinimumContentsLength(12);
  working_ = new QLabel(tr("Reading its records …"), this);
  working_->hide();
  auto* toolLabel = new QLabel(tr("&Tool"), this);
  toolLabel->setBuddy(tool_);
  auto* targetLabel = new QLabel(tr("Set-&point"), this);
  targetLabel->setBuddy(target_);
  auto* check = new QPushButton(tr("Check at the &Bench"), this);
  auto* row = new QHBoxLayout;
  row->addWidget(toolLabel);
  row->addWidget(tool_, 2);
  row->addWidget(targetLabel);
  row->addWidget(target_);
  row->addWidget(working_);
  row->addStretch(1);
  correct_ = new QPushButton(tr("C&orrect the selected check…"), this);
  row->addWidget(correct_);
  row->addWidget(check);
  connect(tool_, &Picker::picked, this, &HistoryPlace::open);
  connect(tool_, &Picker::unknown, this, [this](const QString& typed) {
    message_->say(Tone::Caution,
                  tr("No single tool fits “%1”. Type more of it, or pick one from the list.").arg(typed));
  });
  connect(target_, &QComboBox::activated, this, [this](int index) {
    if (model_.story()) model_.pick(model_.tool(), model_.story()->targets[static_cast<std::size_t>(index)]);
  });
  connect(check, &QPushButton::clicked, this, [this] { emit checkWanted(fromText(model_.tool())); });
  connect(correct_, &QPushButton::clicked, this,
          [this] { emit correctionWanted(model_.checks().checkAt(table_->currentIndex().row())); });
  return row;
}

QLayout* HistoryPlace::makeFiles() {
  certificate_ = new PathLine(PathLine::Direction::Write, tr("File for the certificate of the selected check"),
                              tr("&Write PDF"), tr("PDF (*.pdf)"), this);
  chartFile_ = new PathLine(PathLine::Direction::Write, tr("File for the chart"), tr("Wr&ite chart"),
                            tr("SVG (*.svg);;PNG (*.png)"), this);
  auto* certificateLabel = new QLabel(tr("&Certificate of the selected check"), this);
  certificateLabel->setBuddy(certificate_);
  auto* chartLabel = new QLabel(tr("Ch&art as .svg or .png"), this);
  chartLabel->setBuddy(chartFile_);
  auto* grid = new QGridLayout;
  grid->setVerticalSpacing(2);
  grid->setHorizontalSpacing(20);
  grid->addWidget(certificateLabel, 0, 0);
  grid->addWidget(chartLabel, 0, 1);
  grid->addWidget(certificate_, 1, 0);
  grid->addWidget(chartFile_, 1, 1);
  grid->setColumnStretch(0, 1);
  grid->setColumnStretch(1, 1);
  connect(certificate_, &PathLine::confirmed, this,
          [this] { unlessReplacing(certificate_, [this] { writeCertificate(); }); });
  connect(chartFile_, &PathLine::confirmed, this, [this] { unlessReplacing(chartFile_, [this] { writeChart(); }); });
  return grid;
}

void HistoryPlace::offerTools() {
  const Result<std::vector<Tool>> tools = model_.tools();
  if (!tools) return message_->sayProblems(tools.error());
  std::vector<Picker::Item> items;
  for (const Tool& tool : *tools) {
    items.push_back({fromText(tool.id), fromText(tool.description) + QStringLiteral(", ") + rangeText(tool)});
  }
  tool_->setItems(std::move(items));
}

void HistoryPlace::open(const QString& tool) {
  message_->clear();
  tool_->pick(tool);
  model_.pick(toText(tool));
}

void HistoryPlace::arrive() {
  if (model_.tool().empty()) return tool_->setFocus(Qt::TabFocusReason);
  table_->setFocus(Qt::OtherFocusReason);
}

void HistoryPlace::tell() {
  const QSignalBlocker quiet(target_);
  target_->clear();
  const auto& story = model_.story();
  if (story) {
    for (const StatedTorque target : story->targets) {
      target_->addItem(torqueText(target));
      if (target == story->data.target) target_->setCurrentIndex(target_->count() - 1);
    }
  }
  target_->setEnabled(target_->count() > 0);
  const bool checked = story && !story->targets.empty();
  if (checked) {
    source_->setText(sourceWords(story->data));
  } else if (story) {
    source_->setText(tr("%1 has no check on record yet: check it at the Bench.").arg(fromText(story->data.tool.id)));
  } else {
    source_->setText(tr("Pick a tool above, or press Enter on one in the Cabinet."));
  }
  drawChart();
  if (table_->model()->rowCount() > 0) table_->setCurrentIndex(table_->model()->index(0, 0));
  showFiles();
}

void HistoryPlace::drawChart() {
  const bool dark = isDark(palette());
  const ChartTheme& theme = dark ? darkTheme() : lightTheme();
  view_->setBackgroundBrush(theme.background);
  std::unique_ptr<QChart> before(view_->chart());
  const auto& story = model_.story();
  if (story && !story->targets.empty()) {
    view_->setChart(makeChart(std::make_shared<const ChartModel>(historyChart(story->data)), theme).release());
  } else {
    auto empty = std::make_unique<QChart>();
    empty->setBackgroundBrush(theme.background);
    view_->setChart(empty.release());
  }
}

void HistoryPlace::showFiles() {
  const std::int64_t check = model_.checks().checkAt(table_->currentIndex().row());
  certificate_->setActionEnabled(check != 0);
  correct_->setEnabled(model_.mayCorrect(check));
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

void HistoryPlace::unlessReplacing(PathLine* line, const std::function<void()>& write) {
  if (!line->wouldReplace()) return write();
  message_->say(Tone::Caution, tr("%1 exists already.").arg(line->path()), {{tr("&Replace it"), [line, write] {
                                                                               line->agreeToReplace();
                                                                               write();
                                                                             }}});
}

void HistoryPlace::writeCertificate() {
  const std::int64_t check = model_.checks().checkAt(table_->currentIndex().row());
  if (check == 0) return;
  certificate_->rememberFolder();
  model_.writeCertificate(check, certificate_->path());
}

void HistoryPlace::writeChart() {
  if (!model_.story()) return;
  const Result<void> done = writeChartFile(historyChart(model_.story()->data), chartFile_->path());
  if (!done) return message_->sayProblems(done.error());
  chartFile_->rememberFolder();
  message_->say(Tone::Good, tr("Written: %1").arg(chartFile_->path()));
}

void HistoryPlace::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) drawChart();
}

}  // namespace steadyturn
