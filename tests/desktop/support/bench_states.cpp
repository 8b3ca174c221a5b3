#include "bench_states.h"

#include <QApplication>
#include <QPlainTextEdit>

#include "bench_place.h"
#include "keys.h"
#include "main_window.h"
#include "shop_room.h"
#include "text.h"

namespace steadyturn {
namespace {

const QStringList good{"10.04", "9.98",  "10.07", "10.01", "9.95", "36.21", "36.12", "36.30",
                       "36.05", "36.18", "60.3",  "60.1",  "60.4", "60.2",  "60.3"};
const QStringList bad{"10.6", "10.7", "10.6", "10.7", "10.6", "36.1", "36.0", "35.9",
                      "36.2", "36.0", "60.2", "60.0", "59.9", "60.1", "60.0"};

class Walk {
 public:
  Walk(const QString& shopFile, QSize size, const LookAtBench& look) : file_(shopFile), size_(size), look_(look) {
    addDoubtfulReference();
    open();
  }
  void go() {
    see("empty");
    typing();
    questioned();
    failed();
    corrected();
    doubted();
    setUp();
    tester();
    manyReadings();
    draftOffered();
  }

 private:
  void see(const char* state) {
    QTest::qWait(150);
    look_(*window_, state);
  }
  void open() {
    window_.reset();
    window_ = std::make_unique<MainWindow>();
    window_->resize(size_);
    window_->openShop(file_);
    present(*window_);
    keys_.press(Qt::Key_1, Qt::ControlModifier);
  }
  BenchModel& model() { return window_->room()->bench().model(); }
  void alt(Qt::Key letter) {
    keys_.press(letter, Qt::AltModifier);
    QTest::qWait(20);
  }
  void pick(const QString& id) {
    keys_.press(Qt::Key_A, Qt::ControlModifier);
    keys_.type(id);
    keys_.press(Qt::Key_Return);
  }
  void take(const QString& tool, const QString& reference) {
    alt(Qt::Key_T);
    pick(tool);
    alt(Qt::Key_E);
    pick(reference);
  }
  void type(const QStringList& readings) {
    for (const QString& reading : readings) {
      keys_.type(reading);
      keys_.press(Qt::Key_Return);
    }
  }
  void save() { keys_.press(Qt::Key_S, Qt::ControlModifier); }
  void clear() {
    alt(Qt::Key_L);
    see("cleared");
  }

  void addDoubtfulReference() {
    Shop shop = *Shop::open(toText(file_));
    Reference reference;
    reference.id = "R9";
    reference.description = "old transducer 1 to 25 N·m";
    reference.due = std::chrono::sys_days(std::chrono::year(2025) / 1 / 31);
    reference.expandedUncertaintyPercent = 2;
    if (!shop.addReference(reference) || !shop.setReferenceRange("R9", {.low = 1, .high = 25}))
      qFatal("no doubtful reference");
  }
  void typing() {
    take("W06", "R2");
    see("ready");
    type({"10.04", "9.98"});
    keys_.type("10.");
    see("typing");
    keys_.type("07");
    keys_.press(Qt::Key_Return);
  }
  void questioned() {
    type({"88.5", "1.01", "36.2", "3.1"});
    keys_.type("3O");
    keys_.press(Qt::Key_Return);
    see("questioned");
    save();
    see("refused");
    clear();
  }
  void failed() {
    type(bad);
    see("failing");
    save();
    see("failed");
    alt(Qt::Key_O);
    see("hold-asked");
    keys_.press(Qt::Key_Return);
    QTest::qWait(50);
    see("held");
    alt(Qt::Key_L);
    type(good);
    save();
    see("as-left-passed");
    alt(Qt::Key_O);
    keys_.press(Qt::Key_Return);
    QTest::qWait(50);
    see("released");
  }
  void corrected() {
    take("W07", "R2");
    type(good);
    see("budget-not-measured");
    save();
    see("passed");
    alt(Qt::Key_F);
    see("correction");
    keys_.type("last reading misread");
    keys_.press(Qt::Key_Return);
    type({"10.05"});
    save();
    see("corrected");
  }
  void doubted() {
    take("W19", "R9");
    see("doubts");
  }
  void setUp() {
    take("W06", "R2");
    alt(Qt::Key_U);
    see("set-up");
    for (const char* mean : {"10.00", "10.02", "10.04", "10.01"}) type({mean, mean, mean, mean, mean});
    for (const char* mean : {"10.00", "10.03", "10.01", "9.98"}) {
      for (int i = 0; i < 10; ++i) type({mean});
    }
    alt(Qt::Key_T);
    type({"0.2"});
    type({"10.10", "10.11", "10.09"});
    see("set-up-typed");
    alt(Qt::Key_U);
    see("set-up-refused");
    for (int i = 0; i < 17; ++i) type({"10.05"});
    alt(Qt::Key_B);
    keys_.type("report of the wrench's maker");
    alt(Qt::Key_U);
    see("set-up-saved");
    alt(Qt::Key_D);  // another day: today's check as found is there
    keys_.press(Qt::Key_Up);
    take("W06", "R2");
    type(good);
    see("budget");
    clear();
  }
  void tester() {
    alt(Qt::Key_R);
    see("tester");
    alt(Qt::Key_L);
    for (const char* line : {"10.04 Nm", "7.38 ft-lb", "?? 8"}) {
      keys_.type(line);
      keys_.press(Qt::Key_Return);
    }
    alt(Qt::Key_R);
    keys_.type("{value");
    see("tester-pattern-wrong");
    keys_.press(Qt::Key_A, Qt::ControlModifier);
    keys_.type("{value} {unit}");
    alt(Qt::Key_C);
    see("tester-tried");
    keys_.press(Qt::Key_Escape);
  }
  void manyReadings() {
    take("W21", "R2");
    type({"20.1", "20.0", "2.01", "20.2", "176.9", "20.1", "20.2", "20.0", "20.1", "20.0", "60.2", "60.1"});
    see("ten-readings");
  }
  void draftOffered() {
    alt(Qt::Key_U);
    type({"20.1", "20.0", "20.2"});
    if (!window_->close()) qFatal("the draft was not kept");
    open();
    see("draft-offered");
    alt(Qt::Key_G);
    see("draft-taken-up");
    alt(Qt::Key_U);
    see("set-up-taken-up");
    window_->close();
  }

  QString file_;
  QSize size_;
  const LookAtBench& look_;
  std::unique_ptr<MainWindow> window_;
  Keys keys_;
};

}  // namespace

void throughBenchStates(const QString& shopFile, QSize size, const LookAtBench& look) {
  Walk(shopFile, size, look).go();
}

}  // namespace steadyturn
