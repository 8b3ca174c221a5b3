#include "menus.h"

#include <QAction>
#include <QActionGroup>
#include <QMainWindow>
#include <QMenu>
#include <QMenuBar>

namespace steadyturn {

Menus::Menus(QMainWindow& window, Theme theme) : QObject(&window) {
  makeShopMenu(window);
  makeViewMenu(window, theme);
  makeHelpMenu(window);
}

QAction* Menus::add(QMenu* menu, const QString& label, const QKeySequence& keys, void (Menus::*signal)()) {
  QAction* action = menu->addAction(label);
  action->setShortcut(keys);
  connect(action, &QAction::triggered, this, signal);
  return action;
}

void Menus::makeShopMenu(QMainWindow& window) {
  QMenu* menu = window.menuBar()->addMenu(tr("&Shop"));
  add(menu, tr("&New shop…"), QKeySequence::New, &Menus::newWanted);
  add(menu, tr("&Open a shop…"), QKeySequence::Open, &Menus::openWanted);
  add(menu, tr("&Join a shop on a server…"), {}, &Menus::joinWanted);
  add(menu, tr("&Demo depot"), {}, &Menus::demoWanted);
  menu->addSeparator();
  import_ = add(menu, tr("&Import from CSV…"), tr("Ctrl+Shift+I"), &Menus::importWanted);
  needShop_.push_back(import_);
  needShop_.push_back(add(menu, tr("&Export to CSV…"), tr("Ctrl+Shift+E"), &Menus::exportWanted));
  menu->addSeparator();
  people_ = add(menu, {}, {}, &Menus::peopleWanted);
  needShop_.push_back(people_);
  setFirstLead(true);
  menu->addSeparator();
  QAction* close = menu->addAction(tr("&Close the window"));
  close->setShortcuts({QKeySequence(tr("Ctrl+Q")), QKeySequence(tr("Ctrl+W"))});
  connect(close, &QAction::triggered, &window, &QWidget::close);
}

void Menus::makeViewMenu(QMainWindow& window, Theme theme) {
  QMenu* menu = window.menuBar()->addMenu(tr("&View"));
  for (const Place place : allPlaces) {
    QAction* action = menu->addAction(QStringLiteral("&%1").arg(placeName(place)));
    action->setShortcut(placeShortcut(place));
    connect(action, &QAction::triggered, this, [this, place] { emit placeWanted(place); });
    needShop_.push_back(action);
    places_[static_cast<std::size_t>(place)] = action;
  }
  menu->addSeparator();
  auto* group = new QActionGroup(this);
  const std::pair<Theme, QString> themes[] = {{Theme::System, tr("Colours of the &system")},
                                              {Theme::Light, tr("&Light")},
                                              {Theme::Dark, tr("&Dark")},
                                              {Theme::Contrast, tr("High &contrast")}};
  for (const auto& [offered, label] : themes) {
    QAction* action = menu->addAction(label);
    action->setCheckable(true);
    action->setChecked(offered == theme);
    group->addAction(action);
    connect(action, &QAction::triggered, this, [this, chosen = offered] { emit themeWanted(chosen); });
  }
}

void Menus::makeHelpMenu(QMainWindow& window) {
  QMenu* menu = window.menuBar()->addMenu(tr("&Help"));
  add(menu, tr("&Keys"), QKeySequence::HelpContents, &Menus::keysWanted);
  add(menu, tr("&Cautions"), {}, &Menus::cautionsWanted);
  add(menu, tr("&About Steadyturn"), {}, &Menus::aboutWanted);
}

void Menus::setFirstLead(bool none) { people_->setText(none ? tr("Add the first &lead…") : tr("&People…")); }

void Menus::setReason(Place place, const QString& reason) {
  QAction* action = places_[static_cast<std::size_t>(place)];
  action->setEnabled(reason.isEmpty());
  action->setStatusTip(reason);
}

void Menus::setImportReason(const QString& reason) {
  import_->setEnabled(reason.isEmpty());
  import_->setStatusTip(reason);
}

void Menus::setShopOpen(bool open) {
  for (QAction* action : needShop_) action->setEnabled(open);
}

}  // namespace steadyturn
