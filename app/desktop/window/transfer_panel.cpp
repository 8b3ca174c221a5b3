#include "transfer_panel.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QGridLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QTimer>
#include <cerrno>
#include <cstring>
#include <fstream>

#include "message_line.h"
#include "text.h"

namespace steadyturn {
namespace {

// Below this nobody needs to be told.
constexpr int patienceMilliseconds = 1000;

// Written beside the file and put in its place when it is whole: a cancelled export leaves nothing behind.
Result<void> exportTo(const Shop& shop, TableKind kind, const std::string& path, const ExportOptions& options,
                      const Progress& progress) {
  const std::string part = path + ".part";
  const auto cannotWrite = [&path] {
    return refuse({.kind = ProblemKind::CannotCreate, .field = {}, .found = path, .accepted = std::strerror(errno)});
  };
  std::ofstream out(part, std::ios::binary | std::ios::trunc);
  if (!out) return cannotWrite();
  const Result<void> done = shop.exportCsv(kind, out, options, progress);
  out.close();
  const QString partName = fromText(part);
  if (!done || !out) {
    QFile::remove(partName);
    return done ? Result<void>(cannotWrite()) : done;
  }
  const QString goal = fromText(path);
  if ((QFile::exists(goal) && !QFile::remove(goal)) || !QFile::rename(partName, goal)) {
    QFile::remove(partName);
    return cannotWrite();
  }
  return {};
}

}  // namespace

TransferPanel::TransferPanel(OpenShop& shop, QWidget* parent)
    : QFrame(parent), shop_(shop), title_(new QLabel(this)), kind_(new QComboBox(this)), worker_(shop) {
  const QString csv = tr("CSV (*.csv);;All files (*)");
  source_ = new PathLine(PathLine::Direction::Read, tr("File to import"), tr("&Import"), csv, this);
  goal_ = new PathLine(PathLine::Direction::Write, tr("File to export to"), tr("&Export"), csv, this);
  comma_ = new QCheckBox(tr("&Decimal commas"), this);
  again_ = new QCheckBox(tr("Take it &again, though it was imported before"), this);
  message_ = new MessageLine(this);
  progress_ = new QProgressBar(this);
  progress_->setRange(0, 1000);
  progress_->setAccessibleName(tr("Progress"));
  cancel_ = new QPushButton(tr("Ca&ncel"), this);
  close_ = new QPushButton(tr("Cl&ose"), this);
  patience_ = new QTimer(this);
  patience_->setSingleShot(true);
  patience_->setInterval(patienceMilliseconds);
  for (const TableKind kind :
       {TableKind::Tools, TableKind::References, TableKind::Fasteners, TableKind::Checks, TableKind::Tightenings}) {
    kind_->addItem(fromText(writeTableKind(kind)), static_cast<int>(kind));
  }
  kind_->setAccessibleName(tr("Table"));
  title_->setBuddy(kind_);
  setFrameShape(QFrame::StyledPanel);
  auto* grid = new QGridLayout(this);
  grid->addWidget(title_, 0, 0);
  grid->addWidget(kind_, 0, 1);
  grid->addWidget(source_, 0, 2, 1, 3);
  grid->addWidget(goal_, 0, 2, 1, 3);
  grid->addWidget(close_, 0, 5);
  grid->addWidget(comma_, 1, 1);
  grid->addWidget(again_, 1, 2);
  grid->addWidget(progress_, 1, 3);
  grid->addWidget(cancel_, 1, 4);
  grid->addWidget(message_, 2, 0, 1, 6);
  grid->setColumnStretch(2, 1);
  grid->setColumnStretch(3, 1);
  connect(kind_, &QComboBox::activated, this, &TransferPanel::suggest);
  connect(source_, &PathLine::confirmed, this, &TransferPanel::start);
  connect(goal_, &PathLine::confirmed, this, &TransferPanel::start);
  connect(cancel_, &QPushButton::clicked, this, [this] {
    if (ticket_) ticket_->cancel();
  });
  connect(close_, &QPushButton::clicked, this, &TransferPanel::close);
  connect(patience_, &QTimer::timeout, this, [this] {
    progress_->show();
    cancel_->show();
  });
  setWorking(false);
}

void TransferPanel::begin(PathLine::Direction direction, TableKind kind) {
  show();
  if (working()) return;  // what runs is shown; the next one waits for it
  importing_ = direction == PathLine::Direction::Read;
  title_->setText(importing_ ? tr("Import &table") : tr("Export &table"));
  kind_->setCurrentIndex(kind_->findData(static_cast<int>(kind)));
  source_->setVisible(importing_);
  goal_->setVisible(!importing_);
  again_->setVisible(importing_);
  message_->clear();
  suggest();
  (importing_ ? source_ : goal_)->setFocus(Qt::TabFocusReason);
}

TableKind TransferPanel::kind() const { return static_cast<TableKind>(kind_->currentData().toInt()); }

void TransferPanel::suggest() {
  if (!importing_) goal_->suggest(fromText(writeTableKind(kind())) + QStringLiteral(".csv"));
}

void TransferPanel::start() {
  if (working()) return;
  if (importing_) return startImport(kind(), source_->path());
  if (!goal_->wouldReplace()) return startExport(kind(), goal_->path());
  message_->say(Tone::Caution, tr("%1 exists already.").arg(goal_->path()), {{tr("&Replace it"), [this] {
                                                                                goal_->agreeToReplace();
                                                                                start();
                                                                              }}});
}

void TransferPanel::setWorking(bool working) {
  for (QWidget* widget : std::initializer_list<QWidget*>{kind_, source_, goal_, comma_, again_, close_}) {
    widget->setEnabled(!working);
  }
  progress_->setValue(0);
  if (working) {
    patience_->start();
  } else {
    patience_->stop();
    progress_->hide();
    cancel_->hide();
    ticket_.reset();
  }
}

void TransferPanel::startImport(TableKind kind, const QString& path) {
  message_->say(Tone::Info, tr("Reading %1 …").arg(path));
  setWorking(true);
  const ImportOptions options{.decimalComma = comma_->isChecked(), .again = again_->isChecked(), .by = {}};
  ticket_ = worker_.run<ImportReport>(
      [kind, file = toText(path), options](Shop& shop, const Progress& progress) {
        return shop.importCsv(kind, file, options, progress);
      },
      [this, kind, path](Result<ImportReport> report) { finishImport(kind, path, std::move(report)); },
      [this](double part) { progress_->setValue(static_cast<int>(part * 1000)); });
}

void TransferPanel::finishImport(TableKind kind, const QString& path, Result<ImportReport> report) {
  setWorking(false);
  if (!report) return message_->sayProblems(report.error());
  source_->rememberFolder();
  const QString text = tr("%1: %2 rows read, %3 %4 taken in.")
                           .arg(path)
                           .arg(report->rows)
                           .arg(report->records)
                           .arg(fromText(writeTableKind(kind)));
  QStringList lines{text};
  constexpr std::size_t shown = 3;
  for (std::size_t i = 0; i < report->warnings.size() && i < shown; ++i) lines << fromText(report->warnings[i]);
  if (report->warnings.size() > shown) lines << tr("And %1 more warnings.").arg(report->warnings.size() - shown);
  message_->say(report->warnings.empty() ? Tone::Good : Tone::Caution, lines.join(QLatin1Char('\n')));
  tellChanged(kind);
}

void TransferPanel::tellChanged(TableKind kind) {
  switch (kind) {
    case TableKind::Tools:
      emit shop_.toolsChanged();
      break;
    case TableKind::References:
      emit shop_.referencesChanged();
      break;
    case TableKind::Fasteners:
      emit shop_.fastenersChanged();
      break;
    case TableKind::Checks:
      emit shop_.toolsChanged();
      emit shop_.checksChanged({});
      break;
    case TableKind::Tightenings:
      break;
  }
}

void TransferPanel::startExport(TableKind kind, const QString& path) {
  message_->say(Tone::Info, tr("Writing %1 …").arg(path));
  setWorking(true);
  const ExportOptions options{.decimalComma = comma_->isChecked()};
  ticket_ = worker_.run<bool>(
      [kind, file = toText(path), options](Shop& shop, const Progress& progress) -> Result<bool> {
        if (Result<void> done = exportTo(shop, kind, file, options, progress); !done)
          return tl::unexpected(done.error());
        return true;
      },
      [this, path](Result<bool> done) {
        setWorking(false);
        if (!done) return message_->sayProblems(done.error());
        goal_->rememberFolder();
        message_->say(Tone::Good, tr("Written: %1").arg(path));
      },
      [this](double part) { progress_->setValue(static_cast<int>(part * 1000)); });
}

void TransferPanel::close() {
  hide();
  emit closed();
}

}  // namespace steadyturn
