// The one window: a shop's four places, or the page that offers a shop when none is open.
#pragma once

#include <QMainWindow>
#include <memory>

#include "worker.h"

class QStackedWidget;

namespace steadyturn {

class FirstRunPage;
class HelpPage;
class Menus;
class MessageLine;
class PeoplePage;
class ScanWatch;
class ShopRoom;

class MainWindow : public QMainWindow {
  Q_OBJECT
 public:
  MainWindow();
  ~MainWindow() override;

  // Opens a shop and remembers it. What is wrong is said in the window.
  void openShop(const QString& address, Access access = Access::Work);
  void openDemo();
  void createShop(const QString& address);
  ShopRoom* room() { return room_; }

 protected:
  void closeEvent(QCloseEvent* event) override;

 private:
  void connectMenus();
  void askNew();
  void askOpen();
  void enter(Shop shop);
  void watchServer();
  void leave();
  bool mayLeave(const QString& question, const std::function<void()>& leaveAnyway);
  void say(const Problems& problems, const QString& next);
  void help(const QString& html);
  void backFromHelp();
  void showPeople();
  void showPermissions();
  void openScanned(const QString& code);

  Menus* menus_;
  MessageLine* message_;
  MessageLine* server_;  // while a server does not answer
  QStackedWidget* pages_;
  FirstRunPage* firstRun_;
  HelpPage* help_;
  PeoplePage* people_;
  ShopRoom* room_ = nullptr;
  ScanWatch* scans_;
  bool closing_ = false;
  Ticket making_;
  Worker maker_;  // makes the demo depot
};

}  // namespace steadyturn
