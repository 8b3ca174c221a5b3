#include "group_line.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

namespace steadyturn {

GroupLine::GroupLine(QWidget* parent)
    : QWidget(parent),
      question_(new QLabel(this)),
      name_(new QComboBox(this)),
      automatic_(new QPushButton(tr("As maker, kind and maximum say"), this)) {
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  name_->setEditable(true);
  name_->setInsertPolicy(QComboBox::NoInsert);
  name_->setAccessibleName(tr("Name of the group of tools that are alike"));
  name_->lineEdit()->setPlaceholderText(tr("the name that all tools like it share"));
  question_->setBuddy(name_);
  auto* confirm = new QPushButton(tr("Put it in this group"), this);
  auto* cancel = new QPushButton(tr("Cancel"), this);
  row->addWidget(question_);
  row->addWidget(name_, 1);
  row->addWidget(confirm);
  row->addWidget(automatic_);
  row->addWidget(cancel);
  connect(confirm, &QPushButton::clicked, this, &GroupLine::give);
  connect(name_->lineEdit(), &QLineEdit::returnPressed, this, &GroupLine::give);
  connect(automatic_, &QPushButton::clicked, this, [this] { emit given(tool_, QString()); });
  connect(cancel, &QPushButton::clicked, this, &GroupLine::cancelled);
}

void GroupLine::ask(const QString& tool, const QString& group, const QStringList& names) {
  tool_ = tool;
  question_->setText(tr("Which tools is %1 li&ke?").arg(tool));
  name_->clear();
  name_->addItems(names);
  name_->setCurrentIndex(-1);
  name_->setEditText(group);
  automatic_->setEnabled(!group.isEmpty());
  name_->setFocus(Qt::TabFocusReason);
  name_->lineEdit()->selectAll();
}

void GroupLine::give() {
  const QString name = name_->currentText().trimmed();
  if (name.isEmpty()) return void(emit unnamed());
  emit given(tool_, name);
}

void GroupLine::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return void(emit cancelled());
  QWidget::keyPressEvent(event);
}

}  // namespace steadyturn
