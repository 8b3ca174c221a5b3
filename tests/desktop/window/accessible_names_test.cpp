// Whatever can take the focus has a name that a screen reader can say.
#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAccessible>
#include <QComboBox>
#include <QDateEdit>
#include <QLineEdit>

#include "demo_shop.h"
#include "keys.h"
#include "main_window.h"
#include "shop_room.h"
#include "text.h"

namespace steadyturn {
namespace {

bool isOurs(const QWidget* widget) {
  // Parts that Qt makes inside its own controls.
  if (widget->objectName().startsWith("qt_")) return false;
  for (const QWidget* parent = widget->parentWidget(); parent; parent = parent->parentWidget()) {
    if (qobject_cast<const QComboBox*>(parent) || qobject_cast<const QDateEdit*>(parent) ||
        qobject_cast<const QAbstractItemView*>(parent) || parent->inherits("QMenuBar")) {
      return false;
    }
  }
  return qobject_cast<const QAbstractButton*>(widget) || qobject_cast<const QAbstractItemView*>(widget) ||
         qobject_cast<const QComboBox*>(widget) || qobject_cast<const QDateEdit*>(widget) ||
         qobject_cast<const QLineEdit*>(widget);
}

void expectNames(const QWidget& window) {
  int seen = 0;
  for (QWidget* widget : window.findChildren<QWidget*>()) {
    if (!isOurs(widget) || widget->focusPolicy() == Qt::NoFocus) continue;
    ++seen;
    QAccessibleInterface* accessible = QAccessible::queryAccessibleInterface(widget);
    ASSERT_TRUE(accessible);
    EXPECT_FALSE(accessible->text(QAccessible::Name).trimmed().isEmpty())
        << widget->metaObject()->className() << " in " << widget->parentWidget()->metaObject()->className();
  }
  EXPECT_GT(seen, 2);
}

using AccessibleNames = DemoShop;

TEST_F(AccessibleNames, ofTheFirstRunPage) {
  MainWindow window;
  present(window);
  expectNames(window);
}

TEST_F(AccessibleNames, ofEveryPlace) {
  MainWindow window;
  window.openShop(shopFile());
  present(window);
  window.room()->takeToBench("W06");
  expectNames(window);
}

TEST_F(AccessibleNames, tabReachesEveryControlOfAPlace) {
  MainWindow window;
  window.openShop(shopFile());
  present(window);
  window.room()->takeToBench("W06");
  for (const Place place : allPlaces) {
    window.room()->go(place);
    QSet<QWidget*> reached;
    Keys keys;
    for (int i = 0; i < 200; ++i) {
      reached.insert(QApplication::focusWidget());
      keys.press(Qt::Key_Tab);
    }
    for (QWidget* widget : window.findChildren<QWidget*>()) {
      const bool wanted = isOurs(widget) && widget->isVisible() && widget->isEnabled() &&
                          (widget->focusPolicy() & Qt::TabFocus) && !widget->focusProxy();
      if (!wanted) continue;
      // A checked button stands for its exclusive group, an editor for the control around it.
      const auto* button = qobject_cast<QAbstractButton*>(widget);
      if (button && button->group()) continue;
      bool inside = reached.contains(widget);
      for (QWidget* focus : reached) inside = inside || (focus && widget->isAncestorOf(focus));
      EXPECT_TRUE(inside) << toText(placeName(place)) << ": " << toText(widget->accessibleName()) << " "
                          << widget->metaObject()->className();
    }
  }
}

}  // namespace
}  // namespace steadyturn
