#include "people_page.h"

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

#include "act_guard.h"
#include "message_line.h"
#include "settings.h"
#include "table_look.h"
#include "text.h"
#include "title.h"

namespace steadyturn {
namespace {

void fillRoles(QComboBox& box) {
  for (const AccountRole role : allAccountRoles) box.addItem(fromText(writeRole(role)), static_cast<int>(role));
}

AccountRole chosenRole(const QComboBox& box) { return static_cast<AccountRole>(box.currentData().toInt()); }

}  // namespace

PeoplePage::PeoplePage(QWidget* parent)
    : QWidget(parent),
      title_(new QLabel(this)),
      explanation_(new QLabel(this)),
      message_(new MessageLine(this)),
      table_(new QTableView(this)),
      minutes_(new QDoubleSpinBox(this)) {
  makeTitle(*title_, pageTitle);
  explanation_->setWordWrap(true);
  accounts_ = makeAccounts();
  recovery_ = makeRecovery();
  auto* back = new QPushButton(tr("&Back"), this);
  connect(back, &QPushButton::clicked, this, &PeoplePage::left);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(24, 16, 24, 16);
  column->addWidget(title_);
  column->addWidget(explanation_);
  column->addWidget(message_);
  column->addWidget(accounts_, 1);
  column->addWidget(makeNewcomer());
  column->addWidget(recovery_);
  column->addStretch();
  column->addWidget(back, 0, Qt::AlignLeft);
}

QLineEdit* PeoplePage::pinField(const QString& name) {
  auto* line = new QLineEdit(this);
  line->setEchoMode(QLineEdit::Password);
  line->setAccessibleName(name);
  line->setMaximumWidth(260);
  return line;
}

QWidget* PeoplePage::makeAccounts() {
  auto* block = new QWidget(this);
  auto* column = new QVBoxLayout(block);
  column->setContentsMargins(0, 0, 0, 0);
  table_->setModel(&rows_);
  dressTable(*table_, tr("People with an account"));
  column->addWidget(table_, 1);
  auto* row = new QHBoxLayout;
  newRole_ = new QComboBox(block);
  newRole_->setAccessibleName(tr("New role"));
  fillRoles(*newRole_);
  otherPin_ = pinField(tr("New PIN"));
  otherPin_->setPlaceholderText(tr("new PIN"));
  otherAgain_ = pinField(tr("New PIN, once more"));
  otherAgain_->setPlaceholderText(tr("once more"));
  auto* roleButton = new QPushButton(tr("Change the &role"), block);
  auto* pinButton = new QPushButton(tr("Set the P&IN"), block);
  auto* closing = new QPushButton(tr("&Close the account"), block);
  needs(*roleButton, Act::ManageUsers);
  needs(*pinButton, Act::ChangeOwnPin);
  needs(*closing, Act::ManageUsers);
  for (QWidget* part : std::initializer_list<QWidget*>{newRole_, roleButton, otherPin_, otherAgain_, pinButton}) {
    row->addWidget(part);
  }
  row->addStretch();
  row->addWidget(closing);
  column->addLayout(row);
  auto* locking = new QHBoxLayout;
  auto* label = new QLabel(tr("On this machine the window &locks after"), block);
  label->setBuddy(minutes_);
  minutes_->setRange(1, 480);
  minutes_->setDecimals(0);
  minutes_->setSuffix(tr(" minutes without a key or a click"));
  minutes_->setValue(settings::minutesUnlocked());
  locking->addWidget(label);
  locking->addWidget(minutes_);
  locking->addStretch();
  column->addLayout(locking);
  connect(roleButton, &QPushButton::clicked, this, &PeoplePage::changeRoleOfSelected);
  connect(pinButton, &QPushButton::clicked, this, &PeoplePage::setPinOfSelected);
  connect(closing, &QPushButton::clicked, this, &PeoplePage::closeSelected);
  connect(minutes_, &QDoubleSpinBox::valueChanged, this, [this](double minutes) {
    settings::setMinutesUnlocked(minutes);
    emit minutesChanged(minutes);
  });
  return block;
}

QWidget* PeoplePage::makeNewcomer() {
  auto* block = new QWidget(this);
  auto* form = new QFormLayout(block);
  form->setContentsMargins(0, 8, 0, 0);
  name_ = new QLineEdit(block);
  name_->setAccessibleName(tr("Name"));
  name_->setMaximumWidth(260);
  role_ = new QComboBox(block);
  role_->setAccessibleName(tr("Role"));
  fillRoles(*role_);
  pin_ = pinField(tr("PIN or passphrase"));
  again_ = pinField(tr("PIN or passphrase, once more"));
  auto* adding = new QPushButton(tr("&Add"), block);
  needs(*adding, Act::ManageUsers);
  form->addRow(tr("&Name"), name_);
  form->addRow(tr("R&ole"), role_);
  form->addRow(tr("&PIN or passphrase"), pin_);
  form->addRow(tr("Once &more"), again_);
  form->addRow(QString(), adding);
  connect(adding, &QPushButton::clicked, this, &PeoplePage::add);
  connect(again_, &QLineEdit::returnPressed, adding, &QPushButton::click);
  return block;
}

QWidget* PeoplePage::makeRecovery() {
  auto* block = new QWidget(this);
  auto* row = new QHBoxLayout(block);
  row->setContentsMargins(0, 8, 0, 0);
  code_ = new QLineEdit(block);
  code_->setAccessibleName(tr("Recovery code"));
  code_->setPlaceholderText(tr("recovery code"));
  codePin_ = pinField(tr("The lead's new PIN"));
  codePin_->setPlaceholderText(tr("new PIN"));
  codeAgain_ = pinField(tr("The lead's new PIN, once more"));
  codeAgain_->setPlaceholderText(tr("once more"));
  auto* use = new QPushButton(tr("&Use the code"), block);
  row->addWidget(new QLabel(tr("The selected lead forgot:"), block));
  for (QWidget* part : std::initializer_list<QWidget*>{code_, codePin_, codeAgain_, use}) row->addWidget(part);
  row->addStretch();
  connect(use, &QPushButton::clicked, this, &PeoplePage::recover);
  return block;
}

void PeoplePage::begin(OpenShop& shop) {
  shop_ = &shop;
  message_->clear();
  for (QLineEdit* line : {name_, pin_, again_, otherPin_, otherAgain_, code_, codePin_, codeAgain_}) line->clear();
  refresh();
  (hasUsers(shop.shop()) ? static_cast<QWidget*>(table_) : name_)->setFocus(Qt::OtherFocusReason);
}

void PeoplePage::refresh() {
  const bool first = !hasUsers(shop_->shop());
  title_->setText(first ? tr("Add the first lead") : tr("People"));
  explanation_->setText(
      first
          ? tr("Now whoever has this shop's file may write in it. With the first account that ends: the lead then "
               "adds the others. A lead may do everything; a technician works jobs, records tightenings and holds a "
               "tool; an auditor looks.")
          : tr("A lead may do everything; a technician works jobs, records tightenings and holds a tool; an auditor "
               "looks. A closed account stays on record."));
  accounts_->setVisible(!first);
  recovery_->setVisible(!first);
  role_->setCurrentIndex(role_->findData(static_cast<int>(first ? AccountRole::Lead : AccountRole::Technician)));
  role_->setEnabled(!first);
  const auto chosen = selected();
  rows_.clear();
  rows_.setHorizontalHeaderLabels({tr("Name"), tr("Role"), tr("Account"), tr("Since")});
  const auto all = users(shop_->shop());
  if (!all) return message_->sayProblems(all.error());
  for (const Account& account : *all) {
    const QString texts[]{fromText(account.name), fromText(writeRole(account.role)),
                          account.open ? tr("open") : tr("closed"), fromText(account.since).left(10)};
    QList<QStandardItem*> items;
    for (const QString& text : texts) {
      items.push_back(new QStandardItem(text));
      items.back()->setEditable(false);
    }
    rows_.appendRow(items);
    if (account.name == chosen || rows_.rowCount() == 1) table_->setCurrentIndex(items.front()->index());
  }
  setColumns(*table_, {0, 14, 12, 14});
}

std::string PeoplePage::selected() const {
  const QModelIndex index = table_->currentIndex();
  return index.isValid() ? toText(index.siblingAtColumn(0).data().toString()) : std::string();
}

bool PeoplePage::same(const QLineEdit& pin, const QLineEdit& again) {
  if (pin.text() == again.text()) return true;
  message_->say(Tone::Bad, tr("The two PINs are not the same: type both again."));
  return false;
}

void PeoplePage::tell(const Result<void>& done, const QString& text) {
  if (!done) return message_->sayProblems(done.error());
  message_->say(Tone::Good, text);
  refresh();
  emit peopleChanged();
}

void PeoplePage::tellCode(const QString& before, const std::string& code) {
  message_->say(
      Tone::Caution,
      before + tr("\nThe shop's recovery code, shown this once: %1\nWrite it down and keep it with the leads: "
                  "it gives a lead who forgot a new PIN.")
                   .arg(fromText(code)));
}

void PeoplePage::add() {
  if (!same(*pin_, *again_)) return;
  const std::string name = toText(name_->text().trimmed());
  const std::string pin = toText(pin_->text());
  const auto added = addUser(shop_->shop(), name, chosenRole(*role_), pin);
  if (!added) return message_->sayProblems(added.error());
  for (QLineEdit* line : {name_, pin_, again_}) line->clear();
  // Who has just made the first account is its lead, and goes on working.
  if (!added->recoveryCode.empty()) (void)signIn(shop_->shop(), name, pin);
  tell({}, tr("%1 has an account.").arg(fromText(name)));
  if (!added->recoveryCode.empty()) tellCode(message_->text(), added->recoveryCode);
}

void PeoplePage::changeRoleOfSelected() {
  tell(changeRole(shop_->shop(), selected(), chosenRole(*newRole_)),
       tr("%1 has the role %2.").arg(fromText(selected()), newRole_->currentText()));
}

void PeoplePage::setPinOfSelected() {
  if (!same(*otherPin_, *otherAgain_)) return;
  const auto done = changePin(shop_->shop(), selected(), toText(otherPin_->text()));
  for (QLineEdit* line : {otherPin_, otherAgain_}) line->clear();
  tell(done, tr("The PIN of %1 is changed.").arg(fromText(selected())));
}

void PeoplePage::closeSelected() {
  tell(closeUser(shop_->shop(), selected()), tr("The account of %1 is closed.").arg(fromText(selected())));
}

void PeoplePage::recover() {
  if (!same(*codePin_, *codeAgain_)) return;
  const auto next = recoverLead(shop_->shop(), selected(), toText(code_->text()), toText(codePin_->text()));
  if (!next) return message_->sayProblems(next.error());
  for (QLineEdit* line : {code_, codePin_, codeAgain_}) line->clear();
  tell({}, tr("The PIN of %1 is set anew.").arg(fromText(selected())));
  tellCode(message_->text(), *next);
}

void PeoplePage::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return void(emit left());
  QWidget::keyPressEvent(event);
}

}  // namespace steadyturn
