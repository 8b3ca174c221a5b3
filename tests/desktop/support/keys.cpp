#include "keys.h"

#include <QApplication>

namespace steadyturn {
namespace {

// Where the window system would send a key: an open list first.
QWidget* focused() {
  if (QWidget* list = QApplication::activePopupWidget()) return list;
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
  // A button that answers to a shortcut is seen pressed for a tenth of a second before it acts (QAbstractButton).
  if (modifiers & (Qt::ControlModifier | Qt::AltModifier)) QTest::qWait(150);
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
