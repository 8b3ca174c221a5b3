#include "desk.h"

#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>

#include "message_line.h"
#include "people_bar.h"
#include "shop_people.h"

namespace steadyturn {

const QStringList Desk::passing{"10.0", "10.1", "9,9",  "10.0", "10,1", "36.1", "36.0", "35.9",
                                "36.2", "36.0", "60.2", "60.0", "59.9", "60.1", "60.0"};
const QStringList Desk::failing{"10.6", "10.7", "10.6", "10.7", "10.6", "36.1", "36.0", "35.9",
                                "36.2", "36.0", "60.2", "60.0", "59.9", "60.1", "60.0"};

void Desk::SetUp() {
  DemoShop::SetUp();
  openAgain();
}

void Desk::openAgain() {
  window_.reset();
  window_ = std::make_unique<MainWindow>();
  window_->resize(1280, 800);
  window_->openShop(shopFile());
  present(*window_);
  ASSERT_TRUE(window_->room());
  keys_.press(Qt::Key_1, Qt::ControlModifier);
}

void Desk::signInAsTechnician() {
  Shop shop = open();
  ASSERT_TRUE(addUser(shop, "Nora", AccountRole::Lead, "lead words"));
  ASSERT_TRUE(signIn(shop, "Nora", "lead words"));
  ASSERT_TRUE(addUser(shop, "Petra", AccountRole::Technician, "2468"));
  openAgain();
  named<QComboBox>(room().people(), "Who works here")->setCurrentText("Petra");
  named<QLineEdit>(room().people(), "PIN")->setFocus();
  keys_.type("2468");
  keys_.press(Qt::Key_Return);
  ASSERT_TRUE(wait([this] { return says("Petra, technician"); }));
}

QString Desk::line(const char* name) {
  const auto* message = bench().findChild<MessageLine*>(name);
  return message->isVisible() ? message->text() : QString();
}

bool Desk::says(const QString& text) {
  for (const QLabel* label : window_->findChildren<QLabel*>()) {
    if (label->isVisible() && label->text().contains(text)) return true;
  }
  return false;
}

QString Desk::focusName() {
  const QWidget* focus = QApplication::focusWidget();
  return focus ? focus->accessibleName() : QString();
}

void Desk::take(const QString& tool, const QString& reference) {
  keys_.type(tool);
  keys_.press(Qt::Key_Return);
  keys_.type(reference);
  keys_.press(Qt::Key_Return);
}

void Desk::typeLines(const QStringList& readings) {
  for (const QString& reading : readings) {
    keys_.type(reading);
    keys_.press(Qt::Key_Return);
  }
}

void Desk::answer(Qt::Key letter) {
  keys_.press(letter, Qt::AltModifier);
  QTest::qWait(20);
}

}  // namespace steadyturn
