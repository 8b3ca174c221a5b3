// The menus: Shop, View, Help. What they do is the window's business.
#pragma once

#include <QObject>
#include <array>
#include <vector>

#include "places_rail.h"
#include "theme.h"

class QAction;
class QMainWindow;
class QMenu;

namespace steadyturn {

class Menus : public QObject {
  Q_OBJECT
 public:
  Menus(QMainWindow& window, Theme theme);
  void setShopOpen(bool open);   // what needs a shop is greyed without one
  void setFirstLead(bool none);  // the shop has no accounts yet
  // A place that the role of who is signed in has no use for is greyed; empty: it may be gone to.
  void setReason(Place place, const QString& reason);
  void setImportReason(const QString& reason);

 signals:
  void newWanted();
  void openWanted();
  void joinWanted();
  void demoWanted();
  void importWanted();
  void exportWanted();
  void peopleWanted();
  void placeWanted(steadyturn::Place place);
  void themeWanted(steadyturn::Theme theme);
  void keysWanted();
  void cautionsWanted();
  void aboutWanted();

 private:
  void makeShopMenu(QMainWindow& window);
  void makeViewMenu(QMainWindow& window, Theme theme);
  void makeHelpMenu(QMainWindow& window);
  QAction* add(QMenu* menu, const QString& label, const QKeySequence& keys, void (Menus::*signal)());

  std::vector<QAction*> needShop_;
  std::array<QAction*, allPlaces.size()> places_{};
  QAction *people_ = nullptr, *import_ = nullptr;
};

}  // namespace steadyturn
