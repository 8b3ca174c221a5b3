#include "reason_line.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

namespace steadyturn {
namespace {

QString confirmText(ToolChange change) {
  switch (change) {
    case ToolChange::Hold:
      return ReasonLine::tr("Put on hold");
    case ToolChange::Release:
      return ReasonLine::tr("Put back in service");
    case ToolChange::Retire:
      return ReasonLine::tr("Take out for good");
  }
  return {};
}

QString questionText(ToolChange change) {
  switch (change) {
    case ToolChange::Hold:
      return ReasonLine::tr("&Why is %1 put on hold?");
    case ToolChange::Release:
      return ReasonLine::tr("&Why may %1 be used again?");
    case ToolChange::Retire:
      return ReasonLine::tr("&Why is %1 retired?");
  }
  return {};
}

}  // namespace

ReasonLine::ReasonLine(QWidget* parent)
    : QWidget(parent),
      question_(new QLabel(this)),
      reason_(new QLineEdit(this)),
      confirm_(new QPushButton(confirmText(change_), this)) {
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  reason_->setAccessibleName(tr("Reason"));
  question_->setBuddy(reason_);
  auto* cancel = new QPushButton(tr("Cancel"), this);
  row->addWidget(question_);
  row->addWidget(reason_, 1);
  row->addWidget(confirm_);
  row->addWidget(cancel);
  connect(confirm_, &QPushButton::clicked, this, &ReasonLine::give);
  connect(reason_, &QLineEdit::returnPressed, this, &ReasonLine::give);
  connect(cancel, &QPushButton::clicked, this, &ReasonLine::cancelled);
}

void ReasonLine::ask(ToolChange change, const QString& tool, const QString& proposed) {
  change_ = change;
  tool_ = tool;
  question_->setText(questionText(change).arg(tool));
  confirm_->setText(confirmText(change));
  reason_->setText(proposed);
  reason_->setFocus(Qt::TabFocusReason);
  reason_->selectAll();
}

void ReasonLine::give() { emit given(change_, tool_, reason_->text().trimmed()); }

void ReasonLine::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return void(emit cancelled());
  QWidget::keyPressEvent(event);
}

}  // namespace steadyturn
