#include "keys.h"

#include <QApplication>

namespace steadyturn {
namespace {

QWidget* focused() {
  QWidget* widget = QApplication::focusWidget();
  return widget ? widget : QApplication::activeWindow();
}

}  // namespace

void Keys::type(const QString& text) {
  for (const QChar letter : text) {
    QTest::keyClick(focused(), letter.toLatin1());
    ++count_;
  }
}

void Keys::press(Qt::Key key, Qt::KeyboardModifiers modifiers) {
  QTest::keyClick(focused(), key, modifiers);
  ++count_;
}

void present(QWidget& window) {
  window.show();
  window.activateWindow();
  QApplication::setActiveWindow(&window);
  if (!QTest::qWaitForWindowActive(&window)) qFatal("the window was never active");
}

bool wait(const std::function<bool()>& done) { return QTest::qWaitFor(done, 10000); }

}  // namespace steadyturn
