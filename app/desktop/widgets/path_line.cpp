#include "path_line.h"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QStandardPaths>

namespace steadyturn {
namespace {

const QString folderKey = QStringLiteral("files/folder");

QString lastFolder() {
  const QString home = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
  const QString folder = QSettings().value(folderKey, home).toString();
  return QDir(folder).exists() ? folder : QDir::homePath();
}

}  // namespace

PathLine::PathLine(Direction direction, const QString& accessibleName, const QString& action, const QString& filter,
                   QWidget* parent)
    : QWidget(parent),
      direction_(direction),
      filter_(filter),
      line_(new QLineEdit(this)),
      action_(new QPushButton(action, this)) {
  line_->setAccessibleName(accessibleName);
  auto* browse = new QPushButton(tr("Browse…"), this);
  browse->setAccessibleName(tr("Browse: %1").arg(accessibleName));
  setFocusProxy(line_);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->addWidget(line_, 1);
  row->addWidget(browse);
  row->addWidget(action_);
  connect(browse, &QPushButton::clicked, this, &PathLine::browse);
  const auto confirm = [this] {
    if (action_->isEnabled() && !path().isEmpty()) emit confirmed(path());
  };
  connect(action_, &QPushButton::clicked, this, confirm);
  connect(line_, &QLineEdit::returnPressed, this, confirm);
}

QString PathLine::path() const { return line_->text().trimmed(); }

void PathLine::setPath(const QString& path) { line_->setText(path); }

void PathLine::suggest(const QString& fileName) {
  if (!path().isEmpty() && path() != suggested_) return;
  suggested_ = QDir(lastFolder()).filePath(fileName);
  line_->setText(suggested_);
}

void PathLine::setActionEnabled(bool enabled) { action_->setEnabled(enabled); }

bool PathLine::wouldReplace() const { return path() != agreed_ && QFileInfo::exists(path()); }

void PathLine::agreeToReplace() { agreed_ = path(); }

void PathLine::rememberFolder() const { QSettings().setValue(folderKey, QFileInfo(path()).absolutePath()); }

void PathLine::browse() {
  const QString start = path().isEmpty() ? lastFolder() : path();
  const QString chosen = direction_ == Direction::Read ? QFileDialog::getOpenFileName(this, {}, start, filter_)
                                                       : QFileDialog::getSaveFileName(this, {}, start, filter_);
  if (chosen.isEmpty()) return;
  line_->setText(chosen);
  agreed_ = chosen;
}

}  // namespace steadyturn
