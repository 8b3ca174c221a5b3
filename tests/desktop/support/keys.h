// Real key events to whatever has the focus, as a person's come.
#pragma once

#include <QTest>
#include <QWidget>
#include <functional>

namespace steadyturn {

// Counts what was pressed, a character typed being one.
class Keys {
 public:
  void type(const QString& text);
  void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier);
  int count() const { return count_; }

 private:
  int count_ = 0;
};

// Shows the window and waits until it has the focus.
void present(QWidget& window);
// Lets events run until `done`, at most ten seconds.
bool wait(const std::function<bool()>& done);

// The child of this type with this accessible name; null when there is none.
template <typename Widget>
Widget* named(const QWidget& parent, const QString& accessibleName) {
  for (Widget* widget : parent.findChildren<Widget*>()) {
    if (widget->accessibleName() == accessibleName) return widget;
  }
  return nullptr;
}

// The visible button whose label, without its mnemonic, is this.
template <typename Button>
Button* labelled(const QWidget& parent, const QString& label) {
  for (Button* button : parent.findChildren<Button*>()) {
    if (button->isVisible() && QString(button->text()).remove('&') == label) return button;
  }
  return nullptr;
}

}  // namespace steadyturn
