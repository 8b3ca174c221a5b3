#include "main_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QSettings>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "bench_place.h"
#include "daily_backup.h"
#include "demo_file.h"
#include "first_run_page.h"
#include "help_page.h"
#include "help_words.h"
#include "label_code.h"
#include "menus.h"
#include "message_line.h"
#include "people_bar.h"
#include "people_page.h"
#include "problem_text.h"
#include "scan_watch.h"
#include "server_watch.h"
#include "settings.h"
#include "shop_people.h"
#include "shop_room.h"
#include "text.h"

namespace steadyturn {
namespace {

const QString geometryKey = QStringLiteral("window/geometry");
const QString shopFiles = QStringLiteral("Shops (*.db);;All files (*)");

QString shopFolder() {
  const QString last = settings::lastShop();
  return last.isEmpty() || last.contains(QLatin1String("://")) ? QDir::homePath() : QFileInfo(last).absolutePath();
}

}  // namespace

MainWindow::MainWindow()
    : menus_(new Menus(*this, settings::theme())),
      message_(new MessageLine(this)),
      server_(new MessageLine(this)),
      pages_(new QStackedWidget(this)),
      firstRun_(new FirstRunPage(pages_)),
      help_(new HelpPage(pages_)),
      people_(new PeoplePage(pages_)),
      scans_(new ScanWatch(this)) {
  setWindowTitle(QStringLiteral("Steadyturn"));
  pages_->addWidget(firstRun_);
  pages_->addWidget(help_);
  pages_->addWidget(people_);
  auto* centre = new QWidget(this);
  auto* column = new QVBoxLayout(centre);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(server_);
  column->addWidget(message_);
  column->addWidget(pages_, 1);
  setCentralWidget(centre);
  connect(firstRun_, &FirstRunPage::demoWanted, this, &MainWindow::openDemo);
  connect(firstRun_, &FirstRunPage::newWanted, this, &MainWindow::askNew);
  connect(firstRun_, &FirstRunPage::openWanted, this, &MainWindow::askOpen);
  connect(firstRun_, &FirstRunPage::joinWanted, this, [this](const QString& address) { openShop(address); });
  connect(firstRun_, &FirstRunPage::cancelWanted, this, [this] {
    if (making_) making_->cancel();
  });
  connect(help_, &HelpPage::left, this, &MainWindow::backFromHelp);
  connect(people_, &PeoplePage::left, this, &MainWindow::backFromHelp);
  connect(people_, &PeoplePage::peopleChanged, this, [this] { emit room_->shop().peopleChanged(); });
  connect(people_, &PeoplePage::minutesChanged, this,
          [this](double minutes) { room_->people().setMinutes(minutes); });
  connect(scans_, &ScanWatch::scanned, this, &MainWindow::openScanned);
  server_->setLasting();
  connectMenus();
  menus_->setShopOpen(false);
  resize(1280, 800);
  restoreGeometry(QSettings().value(geometryKey).toByteArray());
  firstRun_->arrive();
}

MainWindow::~MainWindow() {
  // The room's places run work on the shop it owns; it goes while the window is still whole.
  leave();
}

void MainWindow::connectMenus() {
  connect(menus_, &Menus::newWanted, this, &MainWindow::askNew);
  connect(menus_, &Menus::openWanted, this, &MainWindow::askOpen);
  connect(menus_, &Menus::joinWanted, this, [this] {
    pages_->setCurrentWidget(firstRun_);
    firstRun_->askServer();
  });
  connect(menus_, &Menus::demoWanted, this, &MainWindow::openDemo);
  connect(menus_, &Menus::importWanted, this, [this] {
    backFromHelp();
    room_->transfer(PathLine::Direction::Read, TableKind::Checks);
  });
  connect(menus_, &Menus::exportWanted, this, [this] {
    backFromHelp();
    room_->transfer(PathLine::Direction::Write, TableKind::Checks);
  });
  connect(menus_, &Menus::placeWanted, this, [this](Place place) {
    backFromHelp();
    room_->go(place);
  });
  connect(menus_, &Menus::peopleWanted, this, &MainWindow::showPeople);
  connect(menus_, &Menus::themeWanted, this, [](Theme theme) {
    settings::setTheme(theme);
    applyTheme(*qApp, theme);
  });
  connect(menus_, &Menus::keysWanted, this, [this] { help(keysText()); });
  connect(menus_, &Menus::cautionsWanted, this, [this] { help(cautionsText()); });
  connect(menus_, &Menus::aboutWanted, this, [this] { help(aboutText()); });
}

void MainWindow::askNew() {
  QString chosen =
      QFileDialog::getSaveFileName(this, tr("Where is the new shop to be kept?"),
                                   QDir(shopFolder()).filePath(QStringLiteral("workshop.db")), shopFiles);
  if (chosen.isEmpty()) return;
  if (QFileInfo(chosen).suffix().isEmpty()) chosen += QStringLiteral(".db");
  createShop(chosen);
}

void MainWindow::askOpen() {
  const QString chosen = QFileDialog::getOpenFileName(this, tr("Which shop?"), shopFolder(), shopFiles);
  if (!chosen.isEmpty()) openShop(chosen);
}

void MainWindow::createShop(const QString& address) {
  if (!mayLeave(tr("Readings typed for %1 can't be kept on disk."), [this, address] { createShop(address); })) return;
  Result<Shop> shop = Shop::create(toText(address), toText(QFileInfo(address).completeBaseName()));
  if (!shop) return say(shop.error(), tr("Choose another file or folder for the new shop."));
  enter(std::move(*shop));
  message_->say(Tone::Info,
                tr("This shop is empty. Add its tools in the Cabinet one by one, or take in whole tables with Shop, "
                   "Import (Ctrl+Shift+I): tools and references first."));
}

void MainWindow::openShop(const QString& address, Access access) {
  if (!mayLeave(tr("Readings typed for %1 can't be kept on disk."),
                [this, address, access] { openShop(address, access); }))
    return;
  Result<Shop> shop = Shop::open(toText(address), access);
  if (!shop)
    return say(shop.error(),
               tr("Open another shop (Ctrl+O), start a new one (Ctrl+N), or look round the demo depot."));
  enter(std::move(*shop));
}

void MainWindow::openDemo() {
  const QString file = demoFile();
  if (QFileInfo::exists(file)) return openShop(file);
  if (making_) return;
  if (!mayLeave(tr("Readings typed for %1 can't be kept on disk."), [this] { openDemo(); })) return;
  leave();
  message_->clear();
  firstRun_->setWorking(true);
  making_ = maker_.start<QString>(
      [file](const Progress& progress) -> Result<QString> {
        // The shop is closed again here, on the thread that made it.
        const Result<Shop> made = Shop::createDemo(toText(file), progress);
        if (!made) return tl::unexpected(made.error());
        return file;
      },
      [this](Result<QString> made) {
        making_.reset();
        firstRun_->setWorking(false);
        if (!made) return say(made.error(), tr("The demo depot was not made."));
        openShop(*made);
      },
      [this](double part) { firstRun_->setProgress(part); });
}

void MainWindow::enter(Shop shop) {
  leave();
  message_->clear();
  const QString address = fromText(shop.address());
  const QString name = fromText(shop.name());
  const bool readOnly = shop.readOnly();
  const bool noAccounts = !hasUsers(shop);
  room_ = new ShopRoom(std::move(shop), pages_);
  pages_->addWidget(room_);
  pages_->setCurrentWidget(room_);
  menus_->setShopOpen(true);
  menus_->setFirstLead(noAccounts);
  connect(room_, &ShopRoom::permissionsChanged, this, &MainWindow::showPermissions);
  emit room_->shop().peopleChanged();
  // The message below can be put away; that nothing can be written stays said.
  setWindowTitle((name.isEmpty() ? QFileInfo(address).fileName() : name) +
                 (readOnly ? tr(" (read only)") : QString()) + QStringLiteral(" – Steadyturn"));
  // Who only looks leaves no trace here either: the next start opens what was worked in.
  if (room_->shop().shop().access() == Access::Work) settings::setLastShop(address);
  connect(new DailyBackup(room_->shop(), room_), &DailyBackup::failed, message_, [this](const Problems& problems) {
    message_->say(Tone::Caution, tr("Today's backup was not made. %1").arg(wordProblems(problems)));
  });
  watchServer();
  room_->go(Place::Cabinet);
  const QString waiting = room_->bench().waitingText();
  if (!waiting.isEmpty()) {
    message_->say(Tone::Info, waiting, {{tr("&Pick it up at the Bench"), [this] { room_->go(Place::Bench); }}});
    // The Bench says it itself.
    connect(room_, &ShopRoom::wentTo, message_, [this, waiting](Place place) {
      if (place == Place::Bench && message_->text() == waiting) message_->clear();
    });
  }
  if (readOnly) {
    message_->say(Tone::Caution,
                  room_->shop().shop().access() == Access::Work
                      ? tr("This shop can be read but not written to: its file or folder is not yours to write.")
                      : tr("Opened to be looked at alone: nothing is written to this shop or beside it."));
  }
}

void MainWindow::watchServer() {
  auto* watch = new ServerWatch(room_->shop(), room_);
  connect(watch, &ServerWatch::wentAway, server_, [this](const Problems& problems) {
    server_->say(Tone::Bad, tr("The server of this shop does not answer: %1\nWhat you have typed stays where it is; "
                               "nothing new is saved until it answers. It is asked again every %2 seconds.")
                                .arg(wordProblems(problems))
                                .arg(ServerWatch::pause.count()));
  });
  connect(watch, &ServerWatch::cameBack, server_, [this] {
    server_->clear();
    message_->say(Tone::Good, tr("The server answers again. Go on where you were."));
    room_->keepTyped();
  });
}

void MainWindow::leave() {
  server_->clear();
  if (!room_) return;
  pages_->removeWidget(room_);
  room_->deleteLater();  // once the next page stands there
  room_ = nullptr;
  menus_->setShopOpen(false);
  pages_->setCurrentWidget(firstRun_);
  setWindowTitle(QStringLiteral("Steadyturn"));
}

bool MainWindow::mayLeave(const QString& question, const std::function<void()>& leaveAnyway) {
  if (!room_ || closing_) return true;
  const std::vector<std::string> unsaved = room_->keepTyped();
  if (unsaved.empty()) return true;
  QStringList tools;
  for (const std::string& tool : unsaved) tools << fromText(tool);
  message_->say(Tone::Caution, question.arg(tools.join(QStringLiteral(", "))),
                {{tr("Back to the &Bench"),
                  [this, tool = tools.first()] {
                    message_->clear();
                    room_->takeToBench(tool);
                  }},
                 {tr("&Give them up"), [this, leaveAnyway] {
                    closing_ = true;
                    leaveAnyway();
                    closing_ = false;
                  }}});
  return false;
}

void MainWindow::say(const Problems& problems, const QString& next) {
  message_->say(Tone::Bad, wordProblems(problems) + QLatin1Char('\n') + next);
}

void MainWindow::help(const QString& html) {
  help_->display(html);
  pages_->setCurrentWidget(help_);
}

void MainWindow::showPeople() {
  pages_->setCurrentWidget(people_);
  people_->begin(room_->shop());
}

void MainWindow::showPermissions() {
  menus_->setFirstLead(!hasUsers(room_->shop().shop()));
  for (const Place place : allPlaces) menus_->setReason(place, room_->reasonFor(place));
  menus_->setImportReason(room_->reasonFor(Act::Import));
}

void MainWindow::backFromHelp() {
  if (pages_->currentWidget() == room_) return;
  if (room_) {
    pages_->setCurrentWidget(room_);
    room_->arrive();
  } else {
    pages_->setCurrentWidget(firstRun_);
    firstRun_->arrive();
  }
}

void MainWindow::openScanned(const QString& code) {
  const Result<LabelCode> label = parseLabelCode(toText(code));
  if (!label) return message_->sayProblems(label.error());
  if (!room_) return message_->say(Tone::Caution, tr("Open the shop of %1 first (Ctrl+O).").arg(fromText(label->id)));
  backFromHelp();
  message_->clear();
  if (const Result<void> opened = room_->openScanned(label->id); !opened) message_->sayProblems(opened.error());
}

void MainWindow::closeEvent(QCloseEvent* event) {
  if (!mayLeave(tr("Readings typed for %1 can't be kept on disk: closing the window loses them."),
                [this] { close(); })) {
    event->ignore();
    return;
  }
  QSettings().setValue(geometryKey, saveGeometry());
  event->accept();
}

}  // namespace steadyturn
