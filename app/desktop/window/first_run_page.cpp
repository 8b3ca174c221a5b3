#include "first_run_page.h"

#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QProgressBar>
#include <QPushButton>

#include "message_line.h"
#include "title.h"

namespace steadyturn {

FirstRunPage::FirstRunPage(QWidget* parent) : QWidget(parent), message_(new MessageLine(this)) {
  auto* outer = new QVBoxLayout(this);
  outer->addWidget(message_);
  outer->addStretch(2);
  auto* title = new QLabel(tr("Steadyturn"), this);
  makeTitle(*title, 2.6);
  auto* job =
      new QLabel(tr("Torque wrenches that can be believed, and joints that hold: check a shop's torque tools, watch "
                    "them drift, and take the right one at the right setting."),
                 this);
  job->setWordWrap(true);
  auto* grid = new QGridLayout;
  grid->setHorizontalSpacing(24);
  grid->setVerticalSpacing(14);
  grid->addWidget(title, 0, 0, 1, 2);
  grid->addWidget(job, 1, 0, 1, 2);
  int row = 2;
  const auto choice = [&](const QString& label, const QString& words) {
    auto* button = new QPushButton(label, this);
    button->setMinimumHeight(40);
    button->setMinimumWidth(250);
    button->setAutoDefault(true);
    auto* text = new QLabel(words, this);
    text->setWordWrap(true);
    text->setMinimumWidth(420);
    button->setAccessibleDescription(words);
    grid->addWidget(button, row, 0);
    grid->addWidget(text, row, 1);
    ++row;
    return button;
  };
  demo_ = choice(tr("Look round the &demo depot"),
                 tr("An invented municipal vehicle depot with six years of checks. Nothing you do there can hurt."));
  create_ = choice(tr("Start a &new shop…"),
                   tr("An empty shop in one file that you name. Its records can come from CSV files."));
  open_ = choice(tr("&Open a shop…"), tr("A shop that is there already."));
  join_ = choice(tr("&Join a shop on a server"),
                 tr("One that several benches, bays and an office share. Its address is what the command line takes, "
                    "too:"));
  server_ = new QLineEdit(this);
  server_->setPlaceholderText(QStringLiteral("postgresql://server/database"));
  server_->setAccessibleName(tr("Address of a shop on a server"));
  grid->addWidget(server_, row++, 1);
  progress_ = new QProgressBar(this);
  progress_->setAccessibleName(tr("Making the demo depot"));
  progress_->setRange(0, 1000);
  cancel_ = new QPushButton(tr("&Cancel"), this);
  grid->addWidget(progress_, row, 1);
  grid->addWidget(cancel_, row, 0);
  auto* centre = new QHBoxLayout;
  centre->addStretch(1);
  centre->addLayout(grid, 4);
  centre->addStretch(1);
  outer->addLayout(centre);
  outer->addStretch(3);
  connect(demo_, &QPushButton::clicked, this, &FirstRunPage::demoWanted);
  connect(create_, &QPushButton::clicked, this, &FirstRunPage::newWanted);
  connect(open_, &QPushButton::clicked, this, &FirstRunPage::openWanted);
  connect(join_, &QPushButton::clicked, this, &FirstRunPage::join);
  connect(server_, &QLineEdit::returnPressed, this, &FirstRunPage::join);
  connect(cancel_, &QPushButton::clicked, this, &FirstRunPage::cancelWanted);
  setWorking(false);
}

void FirstRunPage::setWorking(bool working) {
  for (QPushButton* button : {demo_, create_, open_, join_}) button->setEnabled(!working);
  progress_->setVisible(working);
  cancel_->setVisible(working);
  progress_->setValue(0);
}

void FirstRunPage::join() {
  const QString address = server_->text().trimmed();
  if (address.isEmpty()) return askServer();
  emit joinWanted(address);
}

void FirstRunPage::askServer() { server_->setFocus(Qt::ShortcutFocusReason); }

void FirstRunPage::setProgress(double part) { progress_->setValue(static_cast<int>(part * 1000)); }

void FirstRunPage::arrive() { demo_->setFocus(Qt::OtherFocusReason); }

}  // namespace steadyturn
