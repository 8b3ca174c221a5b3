// How long the window takes to show a shop of 1,000 tools and about 1,000,000 readings, usable, beside the time of an
// empty Qt window; and the longest that the window's thread was kept from its events while it did.
#include <fmt/core.h>

#include <QApplication>
#include <QElapsedTimer>
#include <QMainWindow>
#include <QSettings>
#include <QTemporaryDir>
#include <QTimer>
#include <algorithm>

#include "cabinet_place.h"
#include "large_shop.h"
#include "main_window.h"
#include "shop_room.h"

namespace {

using namespace steadyturn;

double secondsUntil(QElapsedTimer& clock, const std::function<bool()>& ready) {
  while (!ready()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents, 5);
  return static_cast<double>(clock.nsecsElapsed()) / 1e9;
}

double emptyWindow() {
  QElapsedTimer clock;
  clock.start();
  QMainWindow window;
  window.resize(1280, 800);
  window.show();
  return secondsUntil(clock, [&] { return window.isVisible() && !window.grab().isNull(); });
}

// A timer that should come every millisecond; the largest gap between two of its ticks is how long events had to
// wait.
class Gaps {
 public:
  Gaps() {
    since_.start();
    QObject::connect(&tick_, &QTimer::timeout, [this] { longest_ = std::max(longest_, since_.restart()); });
    tick_.start(1);
  }
  void restart() {
    longest_ = 0;
    since_.restart();
  }
  qint64 longestMilliseconds() const { return longest_; }

 private:
  QTimer tick_;
  QElapsedTimer since_;
  qint64 longest_ = 0;
};

}  // namespace

int main(int argc, char** argv) {
  QApplication application(argc, argv);
  QTemporaryDir folder;
  QSettings::setPath(QSettings::NativeFormat, QSettings::UserScope, folder.path());
  makeLargeShop(folder.path().toStdString(), "large", 1000, 66);

  emptyWindow();  // fonts and styles are loaded once; neither side pays for them
  const double empty = emptyWindow();

  QElapsedTimer clock;
  clock.start();
  MainWindow window;
  window.resize(1280, 800);
  window.openShop(folder.filePath("large.sqlite"));
  window.show();
  Gaps gaps;
  auto& cabinet = window.room()->cabinet().model();
  const double shown = secondsUntil(clock, [&] { return !cabinet.working() && cabinet.rowCount() == 1000; });
  fmt::print("a shop of 1,000 tools and 990,000 readings is usable after {:.1f} x the time of an empty window\n",
             shown / empty);

  gaps.restart();
  clock.restart();
  cabinet.refresh();
  secondsUntil(clock, [&] { return !cabinet.working(); });
  fmt::print("longest wait of an event while all tools are read anew: {} ms\n", gaps.longestMilliseconds());
}
