// Makes pictures of every place with the real widgets on the demo depot: desktop_pictures FOLDER.
// With --bench, of the Bench in each of its states: desktop_pictures --bench FOLDER.
#include <QApplication>
#include <QComboBox>
#include <QDir>
#include <QPushButton>
#include <QSettings>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>
#include <cstdio>
#include <string_view>

#include "bay_place.h"
#include "bench_place.h"
#include "bench_states.h"
#include "cabinet_place.h"
#include "foresight_page.h"
#include "history_place.h"
#include "keys.h"
#include "main_window.h"
#include "shop.h"
#include "shop_room.h"
#include "text.h"
#include "theme.h"

using namespace steadyturn;

namespace {

constexpr QSize size(1280, 800);

bool save(QWidget& window, const QDir& folder, const QString& name) {
  QTest::qWait(150);
  const QString path = folder.filePath(name + ".png");
  if (window.grab().save(path)) return true;
  std::fprintf(stderr, "can't write %s\n", qPrintable(path));
  return false;
}

// The runs of a bench set-up, so that the budget is a measured one.
bool measureBench(const std::string& file) {
  Result<Shop> shop = Shop::open(file);
  if (!shop) return false;
  BenchSetupDraft draft{.tool = "W06",
                        .reference = "R2",
                        .by = "bench, early shift",
                        .date = shop->today() - std::chrono::days(40),
                        .target = "10",
                        .readings = {},
                        .typedSpans = {},
                        .basis = {},
                        .note = {}};
  const char* const means[] = {"10.00", "10.02", "10.05", "10.01"};
  for (const SetupRun run : allSetupRuns) {
    auto& series = draft.readings[static_cast<std::size_t>(run)];
    for (std::size_t i = 0; i < rulesFor(run).series.front(); ++i)
      series.emplace_back(rulesFor(run).readings, means[(i + static_cast<std::size_t>(run)) % 4]);
  }
  return shop->recordBenchSetup(draft).has_value();
}

void typeCheck(BenchPlace& bench) {
  bench.take("W06");
  BenchDraft heading = bench.model().draft();
  heading.reference = "R2";
  heading.by = "bench, early shift";
  bench.model().setHeading(heading);
  emit bench.model().toolPicked();
  const char* const readings[3][5] = {{"10.04", "9.98", "10.07", "10.01", "9.95"},
                                      {"36.21", "36.12", "36.30", "36.05", "36.18"},
                                      {"60.3", "60.1", "62.9", "60.2", ""}};
  for (std::size_t p = 0; p < 3; ++p) {
    for (std::size_t r = 0; r < 5; ++r) bench.model().setReading(p, r, readings[p][r]);
  }
  emit bench.model().pointsRebuilt();
  emit bench.model().evaluated();
}

// A service's list that is being changed.
void showServices(BayPlace& bay) {
  labelled<QPushButton>(bay, QStringLiteral("Service lists…"))->click();
  named<QComboBox>(bay, "List to change")->setCurrentIndex(1);
  labelled<QPushButton>(bay, "Give up changes")->click();
  named<QTableView>(bay, "Fasteners of the list, in order")->setFocus();
  Keys().press(Qt::Key_Down, Qt::AltModifier);
}

void showLimit(BayPlace& bay) {
  labelled<QPushButton>(bay, QStringLiteral("Propose a limit…"))->click();
  Keys().type("14");
  Keys().press(Qt::Key_Return);
}

bool takeAll(MainWindow& window, const QDir& folder, const QString& theme) {
  ShopRoom& room = *window.room();
  const auto ready = [](auto& model) { return QTest::qWaitFor([&model] { return !model.working(); }, 20000); };
  room.go(Place::Cabinet);
  if (!ready(room.cabinet().model()) || !save(window, folder, "cabinet-" + theme)) return false;
  room.go(Place::Bench);
  typeCheck(room.bench());
  if (!save(window, folder, "bench-" + theme)) return false;
  for (const char* fastener : {"MB-02", "MB-07"}) {
    room.go(Place::Bay);
    room.bay().model().choose(*room.shop().shop().fastener(fastener));
    const QString name = QString(fastener) == "MB-02" ? "bay-" : "bay-no-limit-";
    if (!ready(room.bay().model()) || !save(window, folder, name + theme)) return false;
  }
  showLimit(room.bay());  // of MB-07, which has none
  if (!save(window, folder, "bay-limit-" + theme)) return false;
  showServices(room.bay());
  if (!save(window, folder, "bay-services-" + theme)) return false;
  HistoryPlace& history = room.history();
  history.showFleet();
  room.go(Place::History);
  if (!ready(history.model()) || !save(window, folder, "history-fleet-" + theme)) return false;
  history.open("W11");
  if (!ready(history.model()) || !save(window, folder, "history-" + theme)) return false;
  history.model().askSetPoints();
  if (!ready(history.model()) || !save(window, folder, "history-set-points-" + theme)) return false;
  history.open("W22");  // one check: the fleet speaks
  if (!ready(history.model()) || !save(window, folder, "history-borrowed-" + theme)) return false;
  history.showForesight();
  if (!ready(history.foresight().model()) || !save(window, folder, "interval-tool-" + theme)) return false;
  history.showFleet();
  if (!ready(history.model())) return false;
  history.showForesight();
  if (!ready(history.foresight().model()) || !save(window, folder, "interval-" + theme)) return false;
  history.openRecall("W11");
  return ready(history.model()) && save(window, folder, "recall-" + theme);
}

bool takeBenchStates(QApplication& application, const QDir& folder, const QTemporaryDir& home) {
  bool all = true;
  for (const Theme theme : {Theme::Light, Theme::Dark, Theme::Contrast}) {
    applyTheme(application, theme);
    const QString shop = home.filePath(themeWord(theme) + ".db");
    if (!Shop::createDemo(toText(shop))) return false;
    int number = 10;
    // 1920 × 1080 at 150 %, which QT_SCALE_FACTOR=1.5 makes, is 1280 × 720.
    const QSize screen = application.devicePixelRatio() > 1 ? QSize(1280, 720) : size;
    throughBenchStates(shop, screen, [&](MainWindow& window, const QString& state) {
      all = save(window, folder, QStringLiteral("%1-%2-%3").arg(themeWord(theme)).arg(number++).arg(state)) && all;
    });
  }
  return all;
}

}  // namespace

int main(int argc, char** argv) {
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  const QTemporaryDir home;
  QApplication application(argc, argv);
  QSettings::setPath(QSettings::NativeFormat, QSettings::UserScope, home.path());
  const bool states = argc == 3 && std::string_view(argv[1]) == "--bench";
  if (argc != 2 && !states) {
    std::fprintf(stderr, "desktop_pictures [--bench] FOLDER\n");
    return 64;
  }
  const QDir folder(argv[argc - 1]);
  folder.mkpath(".");
  if (states) return takeBenchStates(application, folder, home) ? 0 : 73;
  const std::string shop = toText(home.filePath("demo.db"));
  if (!Shop::createDemo(shop) || !measureBench(shop)) return 73;
  for (const Theme theme : {Theme::Light, Theme::Dark, Theme::Contrast}) {
    applyTheme(application, theme);
    MainWindow window;
    window.resize(size);
    window.show();
    if (theme == Theme::Light && !save(window, folder, "first-run-light")) return 73;
    window.openShop(fromText(shop));
    if (!window.room() || !takeAll(window, folder, themeWord(theme))) return 73;
  }
  return 0;
}
