// How long a person waits for the window of a shop of 1,000 tools and about 1,000,000 readings, from the start of the
// program until all its tools stand there, to be found and opened, and until each one's standing is worked out too,
// beside the start of a program that shows an empty Qt window; and the longest that any action keeps the window's
// thread from its events in that shop. The goals are 10 times until it can be used, and 100 ms.
//
// The program starts itself as either of the two, so that each side loads its own libraries, fonts and styles.
#include <fmt/core.h>

#include <QApplication>
#include <QElapsedTimer>
#include <QMainWindow>
#include <QProcess>
#include <QSettings>
#include <QTemporaryDir>
#include <QTimer>
#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <functional>

#include "bay_place.h"
#include "bench_place.h"
#include "cabinet_place.h"
#include "history_place.h"
#include "large_shop.h"
#include "main_window.h"
#include "shop_room.h"

namespace {

using namespace steadyturn;

void runUntil(const std::function<bool()>& ready) {
  while (!ready()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents, 5);
}

int showEmptyWindow() {
  QMainWindow window;
  window.resize(1280, 800);
  window.show();
  runUntil([&] { return window.isVisible() && !window.grab().isNull(); });
  std::_Exit(0);
}

void showShop(MainWindow& window, const QString& file, bool whole) {
  window.resize(1280, 800);
  window.openShop(file);
  window.show();
  const CabinetModel& cabinet = window.room()->cabinet().model();
  runUntil([&] { return window.isVisible() && cabinet.rowCount() == 1000 && (cabinet.known() || !whole); });
}

// Ends at once, without the orderly close that a person does not wait for.
int showLargeShop(const QString& file, bool whole) {
  MainWindow window;
  showShop(window, file, whole);
  std::_Exit(window.grab().isNull() ? 1 : 0);
}

// A timer that should come every millisecond: the largest gap between two of its ticks is how long events waited.
class Gaps {
 public:
  Gaps() {
    QObject::connect(&tick_, &QTimer::timeout, [this] { longest_ = std::max(longest_, since_.restart()); });
    tick_.start(1);
  }
  qint64 during(const std::function<void()>& act, const std::function<bool()>& done) {
    QCoreApplication::processEvents();
    longest_ = 0;
    since_.start();
    act();
    longest_ = std::max(longest_, since_.elapsed());
    runUntil(done);
    return longest_;
  }

 private:
  QTimer tick_;
  QElapsedTimer since_;
  qint64 longest_ = 0;
};

void setHeading(BenchModel& bench) {
  BenchDraft heading = bench.draft();
  heading.reference = QStringLiteral("R1");
  heading.by = QStringLiteral("bench");
  bench.setHeading(heading);
}

void typeReading(BenchModel& bench, std::size_t point, std::size_t reading) {
  bench.setReading(point, reading, bench.draft().points[point].target);
  bench.keepDraft();
}

int printLongestWaits(const QString& file) {
  MainWindow window;
  showShop(window, file, true);
  Gaps gaps;
  const auto print = [&](const char* what, const std::function<void()>& act, const std::function<bool()>& done) {
    fmt::print("  {:<34} {:>4} ms\n", what, gaps.during(act, done));
    std::fflush(stdout);
  };
  const auto atOnce = [] { return true; };
  fmt::print("longest wait of an event during\n");
  print(
      "opening the shop", [&] { window.openShop(file); },
      [&] { return !window.room()->cabinet().model().working(); });
  ShopRoom& again = *window.room();
  print(
      "reading all tools anew", [&] { again.cabinet().model().refresh(); },
      [&] { return !again.cabinet().model().working(); });
  print(
      "going to the Bench with a tool", [&] { again.takeToBench(QStringLiteral("TW-0500")); }, atOnce);
  BenchModel& bench = again.bench().model();
  setHeading(bench);
  print(
      "typing a reading", [&] { typeReading(bench, 0, 0); }, atOnce);
  for (std::size_t p = 0; p < bench.draft().points.size(); ++p) {
    for (std::size_t r = 0; r < bench.draft().points[p].readings.size(); ++r) typeReading(bench, p, r);
  }
  print(
      "saving a check", [&] { (void)bench.save().value(); }, [&] { return !again.cabinet().model().working(); });
  print(
      "opening a History",
      [&] {
        again.history().open(QStringLiteral("TW-0500"));
        again.go(Place::History);
      },
      [&] { return !again.history().model().working(); });
  print(
      "going to the Bay", [&] { again.go(Place::Bay); }, atOnce);
  print(
      "ranking wrenches for a fastener", [&] { again.bay().model().choose(*again.shop().shop().fastener("F-1")); },
      [&] { return !again.bay().model().working(); });
  return 0;
}

double startMilliseconds(const QStringList& arguments) {
  QElapsedTimer clock;
  clock.start();
  if (QProcess::execute(QCoreApplication::applicationFilePath(), arguments) != 0) std::abort();
  return static_cast<double>(clock.nsecsElapsed()) / 1e6;
}

int compare() {
  QTemporaryDir folder;
  qputenv("XDG_CONFIG_HOME", folder.path().toUtf8());
  makeLargeShop(folder.path().toStdString(), "large", 1000, 66);
  const QString file = folder.filePath(QStringLiteral("large.sqlite"));
  std::array<std::vector<double>, 3> times;
  for (int round = 0; round < 7; ++round) {
    times[0].push_back(startMilliseconds({QStringLiteral("empty")}));
    times[1].push_back(startMilliseconds({QStringLiteral("shop"), file}));
    times[2].push_back(startMilliseconds({QStringLiteral("whole"), file}));
  }
  for (auto& side : times) std::sort(side.begin(), side.end());
  const double empty = times[0][3];
  fmt::print("an empty window stands there after {:.0f} ms\n", empty);
  fmt::print("a shop of 1,000 tools and 990,000 readings, to be used, after {:.0f} ms: {:.1f} x\n", times[1][3],
             times[1][3] / empty);
  fmt::print("the same with every standing worked out, after {:.0f} ms: {:.1f} x\n", times[2][3],
             times[2][3] / empty);
  std::fflush(stdout);
  return QProcess::execute(QCoreApplication::applicationFilePath(), {QStringLiteral("waits"), file});
}

}  // namespace

int main(int argc, char** argv) {
  const QApplication application(argc, argv);
  const QStringList arguments = QCoreApplication::arguments();
  const QString part = arguments.value(1);
  if (part.isEmpty()) return compare();
  if (part == QLatin1String("empty")) return showEmptyWindow();
  if (part == QLatin1String("shop")) return showLargeShop(arguments.value(2), false);
  if (part == QLatin1String("whole")) return showLargeShop(arguments.value(2), true);
  return printLongestWaits(arguments.value(2));
}
