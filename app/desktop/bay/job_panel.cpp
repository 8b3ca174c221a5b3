#include "job_panel.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QSignalBlocker>

#include "act_guard.h"
#include "text.h"

namespace steadyturn {
namespace {

constexpr int linesHeight = 168;

}  // namespace

JobPanel::JobPanel(BayModel& model, QWidget* parent)
    : QWidget(parent),
      model_(model),
      jobs_(new QComboBox(this)),
      lines_(new QListView(this)),
      foot_(new QWidget(this)),
      reason_(new QLineEdit(foot_)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  auto* label = new QLabel(tr("Sheet to &mark off"), this);
  label->setBuddy(jobs_);
  jobs_->setAccessibleName(tr("Sheet to mark off"));
  jobs_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  auto* opening = new QPushButton(tr("O&pen a job"), this);
  auto* head = new QHBoxLayout;
  head->addWidget(jobs_, 1);
  head->addWidget(opening);
  lines_->setModel(&model_.jobLines());
  lines_->setAccessibleName(tr("Lines of the job's sheet"));
  lines_->setFixedHeight(linesHeight);
  lines_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  lines_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  reason_->setPlaceholderText(tr("why, if something is left undone"));
  reason_->setAccessibleName(tr("Why the job is closed with something undone"));
  auto* printing = new QPushButton(tr("Pr&int"), foot_);
  auto* closing = new QPushButton(tr("Close jo&b"), foot_);
  auto* row = new QHBoxLayout(foot_);
  row->setContentsMargins(0, 0, 0, 0);
  row->addWidget(reason_, 1);
  row->addWidget(printing);
  row->addWidget(closing);
  auto* services = new QPushButton(tr("Service lists…"), this);
  auto* over = new QHBoxLayout;
  over->addWidget(label, 1);
  over->addWidget(services);
  column->addLayout(over);
  column->addLayout(head);
  column->addWidget(lines_);
  column->addWidget(foot_);
  connect(jobs_, &QComboBox::currentIndexChanged, this, [this] { model_.takeJob(jobs_->currentData().toString()); });
  needs(*opening, Act::WorkJob);
  needs(*closing, Act::WorkJob);
  connect(opening, &QPushButton::clicked, this, &JobPanel::openWanted);
  connect(services, &QPushButton::clicked, this, &JobPanel::servicesWanted);
  connect(closing, &QPushButton::clicked, this, &JobPanel::close);
  connect(printing, &QPushButton::clicked, this, &JobPanel::print);
  connect(lines_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& current) {
    if (const JobLine* line = model_.jobLines().at(current.row())) model_.chooseMark(line->spec.id);
  });
  connect(&model_, &BayModel::jobsChanged, this, &JobPanel::showJobs);
  connect(&model_, &BayModel::sheetChanged, this, &JobPanel::showSheet);
  showJobs();
}

void JobPanel::showJobs() {
  const QSignalBlocker quiet(jobs_);
  jobs_->clear();
  jobs_->addItem(tr("none"), QString());
  for (const JobRecord& job : model_.jobs()) {
    jobs_->addItem(fromText(job.id) + QStringLiteral(" – ") + fromText(job.vehicle), fromText(job.id));
  }
  const auto& sheet = model_.sheet();
  jobs_->setCurrentIndex(std::max(0, sheet ? jobs_->findData(fromText(sheet->job.id)) : 0));
  showSheet();
}

void JobPanel::showSheet() {
  const bool any = model_.sheet().has_value();
  lines_->setVisible(any);
  foot_->setVisible(any);
  reason_->clear();
}

void JobPanel::nextLine() {
  const int row = model_.jobLines().firstLacking();
  if (row < 0) return;
  lines_->setCurrentIndex(model_.jobLines().index(row));
  lines_->setFocus(Qt::OtherFocusReason);
}

void JobPanel::close() {
  const QString job = jobs_->currentText();
  if (const Result<void> closed = model_.closeJob(reason_->text()); !closed) {
    reason_->setFocus(Qt::OtherFocusReason);
    return void(emit troubled(closed.error()));
  }
  emit told(Tone::Good, tr("Closed: %1.").arg(job));
}

void JobPanel::print() {
  const Result<QString> written = model_.writeSheet();
  if (!written) return void(emit troubled(written.error()));
  emit told(Tone::Good, tr("The sheet is written: %1").arg(*written));
}

}  // namespace steadyturn
