#include "papers_panel.h"

#include <QComboBox>
#include <QFileInfo>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <chrono>

#include "message_line.h"
#include "papers.h"
#include "path_line.h"
#include "problem_text.h"
#include "save_file.h"
#include "text.h"
#include "title.h"
#include "writers.h"

namespace steadyturn {
namespace {

struct Order {
  Paper paper;
  QString path;
  Date asOf;
  int within;
  std::string tool;
};

bool isAboutDueWork(Paper paper) { return paper == Paper::DueList || paper == Paper::DueCalendar; }
bool mayBeCsv(Paper paper) { return paper == Paper::DueList || paper == Paper::Register; }

QString endingsOf(Paper paper) {
  if (paper == Paper::DueCalendar) return QStringLiteral(".ics");
  return mayBeCsv(paper) ? PapersPanel::tr(".pdf or .csv") : QStringLiteral(".pdf");
}

bool hasItsEnding(const Order& order) {
  const QString ending = QFileInfo(order.path).suffix().toLower();
  if (order.paper == Paper::DueCalendar) return ending == QLatin1String("ics");
  return ending == QLatin1String("pdf") || (mayBeCsv(order.paper) && ending == QLatin1String("csv"));
}

Result<IssuedFile> writeDocument(Shop& shop, const PaperSubject& paper, const ReportDocument& report,
                                 const Order& order) {
  const bool csv = order.path.endsWith(QLatin1String(".csv"), Qt::CaseInsensitive);
  return issueFile(shop, paper, order.path,
                   [&](QIODevice& out) { return csv ? writeCsv(report, out) : writePdf(report, out); });
}

// Days for a calendar are no paper that anybody is shown, so the ledger does not tell of them.
Result<IssuedFile> writeCalendarFile(const Shop& shop, const Order& order) {
  const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
  const auto data = dueCalendarOf(shop, order.asOf, order.within, now);
  if (!data) return tl::unexpected(data.error());
  const auto calendar = writeCalendar(*data);
  if (!calendar) return tl::unexpected(calendar.error());
  Result<void> saved = saveFile(order.path, [&](QIODevice& out) -> Result<void> {
    out.write(QByteArray::fromStdString(*calendar));
    return {};
  });
  if (!saved) return tl::unexpected(saved.error());
  return IssuedFile{.path = order.path, .untold = {}};
}

Result<IssuedFile> writeLabelFile(Shop& shop, const Order& order) {
  const bool one = order.paper == Paper::OneLabel;
  const auto labels = labelsOf(shop, one ? std::vector{order.tool} : std::vector<std::string>{});
  if (!labels) return tl::unexpected(labels.error());
  const LabelSheet sheet = one ? singleLabel() : a4Labels();
  return issueFile(shop, {.what = "labels", .id = one ? order.tool : std::string()}, order.path,
                   [&](QIODevice& out) { return writeLabels(*labels, sheet, shop.today(), out); });
}

Result<IssuedFile> writePaper(Shop& shop, const Order& order) {
  if (!hasItsEnding(order)) {
    return refuse({.field = "file",
                   .found = toText(order.path),
                   .accepted = "a name that ends in " + toText(endingsOf(order.paper))});
  }
  if (order.paper == Paper::DueCalendar) return writeCalendarFile(shop, order);
  if (order.paper == Paper::DueList) {
    const auto data = dueListOf(shop, order.asOf, order.within);
    if (!data) return tl::unexpected(data.error());
    return writeDocument(shop, {.what = "due"}, buildDueList(*data), order);
  }
  if (order.paper == Paper::Register) {
    const auto data = shop.toolRegister(order.asOf);
    if (!data) return tl::unexpected(data.error());
    return writeDocument(shop, {.what = "register"}, buildToolRegister(*data), order);
  }
  return writeLabelFile(shop, order);
}

}  // namespace

PapersPanel::PapersPanel(OpenShop& shop, QWidget* parent)
    : QFrame(parent),
      shop_(shop),
      title_(new QLabel(tr("Papers about the tools"), this)),
      paper_(new QComboBox(this)),
      within_(new QComboBox(this)),
      withinLabel_(new QLabel(tr("Loo&k ahead"), this)),
      file_(new PathLine(PathLine::Direction::Write, tr("File for the paper"), tr("&Write it"), {}, this)),
      message_(new MessageLine(this)),
      worker_(shop) {
  makeTitle(*title_);
  const std::pair<Paper, QString> papers[] = {{Paper::DueList, tr("due work, as a list for the bench")},
                                              {Paper::DueCalendar, tr("due work, for a calendar (RFC 5545)")},
                                              {Paper::Labels, tr("labels of all tools in use, A4 sheets")},
                                              {Paper::OneLabel, tr("one label, of the selected tool")},
                                              {Paper::Register, tr("register of all tools")}};
  for (const auto& [paper, words] : papers) paper_->addItem(words, static_cast<int>(paper));
  const std::pair<int, QString> spans[] = {
      {0, tr("overdue only")}, {7, tr("one week")}, {31, tr("one month")}, {92, tr("three months")}};
  for (const auto& [days, words] : spans) within_->addItem(words, days);
  within_->setCurrentIndex(2);
  auto* paperLabel = new QLabel(tr("Pape&r"), this);
  paperLabel->setBuddy(paper_);
  paper_->setAccessibleName(tr("Paper"));
  withinLabel_->setBuddy(within_);
  within_->setAccessibleName(tr("Look ahead"));
  auto* back = new QPushButton(tr("Back to the too&l"), this);
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 4, 0, 0);
  grid->addWidget(title_, 0, 0, 1, 2);
  grid->addWidget(paperLabel, 1, 0);
  grid->addWidget(withinLabel_, 1, 1);
  grid->addWidget(paper_, 2, 0);
  grid->addWidget(within_, 2, 1);
  grid->addWidget(file_, 3, 0, 1, 2);
  grid->addWidget(back, 3, 2);
  grid->addWidget(message_, 4, 0, 1, 3);
  grid->setRowStretch(5, 1);
  grid->setColumnStretch(0, 2);
  grid->setColumnStretch(1, 1);
  connect(paper_, &QComboBox::currentIndexChanged, this, &PapersPanel::suggest);
  connect(file_, &PathLine::confirmed, this, &PapersPanel::write);
  connect(back, &QPushButton::clicked, this, &PapersPanel::left);
}

void PapersPanel::begin(const QString& selectedTool) {
  tool_ = selectedTool;
  message_->clear();
  suggest();
  paper_->setFocus(Qt::TabFocusReason);
}

Paper PapersPanel::paper() const { return static_cast<Paper>(paper_->currentData().toInt()); }

void PapersPanel::suggest() {
  within_->setEnabled(isAboutDueWork(paper()));
  const QString day = dateText(shop_.shop().today());
  switch (paper()) {
    case Paper::DueList:
      return file_->suggest(QStringLiteral("due-%1.pdf").arg(day));
    case Paper::DueCalendar:
      return file_->suggest(QStringLiteral("due-%1.ics").arg(day));
    case Paper::Labels:
      return file_->suggest(QStringLiteral("labels-%1.pdf").arg(day));
    case Paper::OneLabel:
      return file_->suggest(QStringLiteral("label-%1.pdf").arg(tool_));
    case Paper::Register:
      return file_->suggest(QStringLiteral("tools-%1.pdf").arg(day));
  }
}

void PapersPanel::write() {
  if (!file_->wouldReplace()) return start(file_->path());
  message_->say(Tone::Caution, tr("%1 exists.").arg(file_->path()), {{tr("Replace it"), [this] {
                                                                        file_->agreeToReplace();
                                                                        start(file_->path());
                                                                      }}});
}

void PapersPanel::start(const QString& path) {
  file_->rememberFolder();
  const Order order{.paper = paper(),
                    .path = path,
                    .asOf = shop_.shop().today(),
                    .within = within_->currentData().toInt(),
                    .tool = toText(tool_)};
  worker_.run<IssuedFile>([order](Shop& shop, const Progress&) { return writePaper(shop, order); },
                          [this](const Result<IssuedFile>& done) { tell(done); });
}

void PapersPanel::tell(const Result<IssuedFile>& done) {
  if (!done) return message_->sayProblems(done.error());
  sayIssued(*message_, *done);
}

void PapersPanel::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return void(emit left());
  QFrame::keyPressEvent(event);
}

}  // namespace steadyturn
