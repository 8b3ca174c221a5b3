#include "people_bar.h"

#include <QApplication>
#include <QComboBox>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "problem_text.h"
#include "settings.h"
#include "shop_people.h"
#include "text.h"

namespace steadyturn {

PeopleBar::PeopleBar(OpenShop& shop, QWidget* parent)
    : QFrame(parent),
      shop_(shop),
      who_(new QLabel(this)),
      name_(new QComboBox(this)),
      pin_(new QLineEdit(this)),
      wrong_(new QLabel(this)),
      enter_(new QPushButton(tr("Sign in"), this)),
      leave_(new QPushButton(tr("Sign out"), this)),
      worker_(shop) {
  setObjectName(QStringLiteral("peopleBar"));
  setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
  name_->setAccessibleName(tr("Who works here"));
  pin_->setAccessibleName(tr("PIN"));
  pin_->setEchoMode(QLineEdit::Password);
  pin_->setPlaceholderText(tr("PIN"));
  pin_->setMaximumWidth(220);
  wrong_->setWordWrap(true);
  wrong_->setAccessibleName(tr("Why nobody was signed in"));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(12, 4, 8, 4);
  row->addWidget(who_);
  row->addWidget(name_);
  row->addWidget(pin_);
  row->addWidget(enter_);
  row->addWidget(wrong_, 1);
  row->addStretch();
  row->addWidget(leave_);
  connect(enter_, &QPushButton::clicked, this, &PeopleBar::trySignIn);
  connect(pin_, &QLineEdit::returnPressed, this, &PeopleBar::trySignIn);
  connect(leave_, &QPushButton::clicked, this, &PeopleBar::leave);
  idle_.setSingleShot(true);
  connect(&idle_, &QTimer::timeout, this, &PeopleBar::lock);
  setMinutes(settings::minutesUnlocked());
  qApp->installEventFilter(this);
  refresh();
}

void PeopleBar::setMinutes(double minutes) { idle_.setInterval(static_cast<int>(minutes * 60'000)); }

void PeopleBar::fillNames() {
  const QString chosen = locked() ? lockedOut_ : name_->currentText();
  name_->clear();
  if (const auto all = users(shop_.shop())) {
    for (const Account& account : *all) {
      if (account.open) name_->addItem(fromText(account.name));
    }
  }
  name_->setCurrentIndex(std::max(0, name_->findText(chosen)));
}

void PeopleBar::refresh() {
  // Where nothing can be written there is nothing to sign in for.
  setVisible(hasUsers(shop_.shop()) && !shop_.shop().readOnly());
  const auto account = steadyturn::signedIn(shop_.shop());
  if (!account) fillNames();
  who_->setText(account    ? tr("%1, %2").arg(fromText(account->name), fromText(writeRole(account->role)))
                : locked() ? tr("Locked. What is typed is still there.")
                           : tr("Nobody is signed in: look at everything, change nothing."));
  for (QWidget* asking : std::initializer_list<QWidget*>{name_, pin_, enter_}) asking->setVisible(!account);
  leave_->setVisible(account.has_value());
  wrong_->clear();
  wrong_->hide();
  if (account) {
    idle_.start();
  } else {
    idle_.stop();
  }
}

void PeopleBar::trySignIn() {
  if (asking_) return;
  asking_ = worker_.run<Session>(
      [name = toText(name_->currentText()), pin = toText(pin_->text())](Shop& shop,
                                                                        const Progress&) -> Result<Session> {
        const auto account = signIn(shop, name, pin);
        if (!account) return tl::unexpected(account.error());
        return shop.session();
      },
      [this](const Result<Session>& done) { let(done); });
  pin_->clear();
}

void PeopleBar::let(const Result<Session>& done) {
  asking_.reset();
  if (!done) {
    wrong_->setText(wordProblems(done.error()));
    wrong_->show();
    pin_->setFocus(Qt::OtherFocusReason);
    return;
  }
  shop_.shop().actAs(*done);
  lockedOut_.clear();
  refresh();
  emit shop_.peopleChanged();
  if (before_) before_->setFocus(Qt::OtherFocusReason);
  before_.clear();
  emit signedIn();
}

void PeopleBar::leave() {
  emit aboutToLock();
  signOut(shop_.shop());
  lockedOut_.clear();
  refresh();
  emit shop_.peopleChanged();
}

void PeopleBar::lock() {
  const auto account = steadyturn::signedIn(shop_.shop());
  if (!account) return;
  before_ = QApplication::focusWidget();
  emit aboutToLock();
  signOut(shop_.shop());
  lockedOut_ = fromText(account->name);
  refresh();
  emit shop_.peopleChanged();
  pin_->setFocus(Qt::OtherFocusReason);
}

bool PeopleBar::eventFilter(QObject* watched, QEvent* event) {
  switch (event->type()) {
    case QEvent::KeyPress:
    case QEvent::MouseButtonPress:
    case QEvent::MouseMove:
    case QEvent::Wheel:
    case QEvent::TouchBegin:
      if (idle_.isActive()) idle_.start();
      break;
    default:
      break;
  }
  return QFrame::eventFilter(watched, event);
}

}  // namespace steadyturn
